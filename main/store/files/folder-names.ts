/** What lies in a data folder, by name: the log of what happened, a document for each job, the shop, and a snapshot. */
export const LOG_NAME = 'log.jsonl';
export const JOBS_NAME = 'jobs';
export const SHOP_NAME = 'shop.json';
export const SNAPSHOT_NAME = 'snapshot.bin';
