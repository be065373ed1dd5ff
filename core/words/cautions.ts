/** What can hurt at each station (common practice, no source), and what comes before anything said here. */
export const cautionWords = {
  'caution.first': 'The machine’s manual, local codes and proper training come first.',
  'caution.short': 'Under {least} long: never hand-feed it; use a carrier.',
  'caution.milling.1': 'Only flat, straight stock goes over the jointer and through the planer.',
  'caution.milling.2':
    'Nothing shorter than the planer’s minimum length: cut short parts from a long piece afterwards.',
  'caution.milling.3': 'Use push blocks on the jointer; true face and edge before thickness.',
  'caution.band-saw.1': 'Set the guard just above the stock; use a blade narrow enough for the radius.',
  'caution.band-saw.2': 'Keep hands out of the line of the cut; stop the saw before backing out of it.',
  'caution.band-saw.3': 'Fix the carrier and its pivot before the blade runs.',
  'caution.spindle-sander.1': 'Feed against the drum’s rotation and keep the rail moving.',
  'caution.spindle-sander.2':
    'Lay the rail on its face, flat on the table; use the insert that fits the drum closely.',
  'caution.spindle-sander.3': 'Run the dust extraction and wear a mask.',
  'caution.router-table.1':
    'Feed against the cutter’s rotation; never trap the work between cutter and fence.',
  'caution.router-table.2':
    'With a bearing cutter, start against the pin; take light passes; back up end grain.',
  'caution.router-table.3': 'Hold short pieces in a carrier; run a large raising cutter at low speed.',
  'caution.table-saw.1':
    'Unplug the saw to change blade or tilt; use guard and splitter wherever the cut allows.',
  'caution.table-saw.2':
    'Stopped rip: feed to the stop block, switch off, wait until the blade has stopped. Never pull the work back while the blade is turning.',
  'caution.table-saw.3':
    'Never use fence and miter gauge together on a through cut. Stop the saw before clearing offcuts.',
  'caution.table-saw.4': 'Use push stick and featherboard; prove tilt and height on scrap.',
  'caution.mortiser.1': 'Clamp the work down and back; set the gap between bit and chisel first.',
  'caution.mortiser.2': 'Cut the two ends first, then between them; clear chips often.',
  'caution.mortiser.3': 'Keep hands off the column and the work while the chisel moves.',
  'caution.bench.1': 'Keep both hands behind the chisel’s cutting edge.',
  'caution.bench.2': 'Hold the work with vise or clamp, never by hand.',
  'caution.bench.3': 'Clamp the guide block before the chisel touches the miter.',
  'caution.assembly.1': 'No glue in the groove or on the panel: it must stay free.',
  'caution.assembly.2': 'Before the glue sets: both diagonals equal, and no twist.',
  'caution.assembly.3': 'Two people lift a large door. Tighten clamps evenly; keep fingers out of the joint.',
  'caution.fitting.1': 'Support or clamp the door before it is planed or sawn.',
  'caution.fitting.2': 'Plane from the ends inward, so that no corner breaks out.',
  'caution.fitting.3': 'Check the hinge side first; take a little off, and try the door again.',
} as const;

/** The cautions of a station, in order, as keys. */
export function cautionKeys(station: string): (keyof typeof cautionWords)[] {
  return (Object.keys(cautionWords) as (keyof typeof cautionWords)[]).filter((key) =>
    key.startsWith(`caution.${station}.`),
  );
}
