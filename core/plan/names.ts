/** The names that the plan, the marks and the screens share: stations, members and stages, as printed. */

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

/** Stages that belong to the door as a whole, not to one of its parts, in order. */
export const DOOR_STAGES = ['dryfit', 'glue', 'trim'] as const;
/** A stage of the door as a whole, by its id. */
export type DoorStage = (typeof DOOR_STAGES)[number];

/** Is this text the id of a station? */
export function isStation(text: string): text is StationId {
  return (STATIONS as readonly string[]).includes(text);
}

/** Is this stage one that the whole door passes, any live part standing for it? */
export function isDoorStage(stage: string): stage is DoorStage {
  return (DOOR_STAGES as readonly string[]).includes(stage);
}
