/** What can hurt at a station whatever is done there. */
export const stationCautionWords = {
  'caution.milling.1': 'Only flat, straight stock goes over the jointer and through the planer.',
  'caution.milling.2':
    'Nothing shorter than the planer’s minimum length: cut short parts from a long piece afterwards.',
  'caution.milling.3': 'True face and edge on the jointer first; then thickness in the planer.',
  'caution.band-saw.1': 'Set the guard just above the stock; keep hands out of the line of the cut.',
  'caution.band-saw.2': 'Stop the saw before backing out of a cut, and before clearing the table.',
  'caution.band-saw.3':
    'A ticking blade is cracked: switch off, wheel guards shut until the saw has stopped.',
  'caution.spindle-sander.1': 'Let the drum reach speed before the work touches it; keep the work moving.',
  'caution.spindle-sander.2': 'Use the insert that fits the drum closely; change drums unplugged.',
  'caution.spindle-sander.3': 'Run the dust extraction and wear a mask.',
  'caution.router-table.1':
    'Feed against the cutter’s rotation; never trap the work between cutter and fence.',
  'caution.router-table.2':
    'With a bearing cutter, start against the pin; take light passes; back up end grain.',
  'caution.router-table.3': 'Change the cutter unplugged; hold short pieces in a carrier.',
  'caution.table-saw.1':
    'Unplug the saw to change blade or tilt; use guard and splitter wherever the cut allows.',
  'caution.table-saw.2':
    'Never use fence and miter gauge together on a through cut. Stop the saw before clearing offcuts.',
  'caution.table-saw.3': 'Use push stick and featherboard; prove tilt and height on scrap.',
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
