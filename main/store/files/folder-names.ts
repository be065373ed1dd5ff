/** What lies in a data folder, by name: the log of what happened, a document for each job, the shop, a snapshot, and the network's keys and devices. */
export const LOG_NAME = 'log.jsonl';
export const JOBS_NAME = 'jobs';
export const SHOP_NAME = 'shop.json';
export const SNAPSHOT_NAME = 'snapshot.bin';
export const NETWORK_KEYS_NAME = 'network-keys.json';
export const DEVICES_NAME = 'devices.json';
export const DEVICE_WAYS_NAME = 'device-ways.json';
