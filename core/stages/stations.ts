/** The places where work is done, in the order in which a blank usually meets them. Ids appear in addresses and marks. */
export const STATIONS = [
  'milling',
  'band-saw',
  'spindle-sander',
  'router-table',
  'table-saw',
  'mortiser',
  'bench',
  'assembly',
  'fitting',
] as const;
/** A station by its id. */
export type StationId = (typeof STATIONS)[number];

/** Is this text the id of a station? */
export function isStation(text: string): text is StationId {
  return (STATIONS as readonly string[]).includes(text);
}
