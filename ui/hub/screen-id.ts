/** By what the hub tells this page from others: new with each load. */
export const screenId: string = crypto.randomUUID();
