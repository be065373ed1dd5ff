/** A job's units; every printed length of the job is in them. */
export type Units = 'in' | 'mm';
