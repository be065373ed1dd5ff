/** Fields of a door as a job file gives them, for tests. */
export type DoorFields = Readonly<Record<string, unknown>>;
