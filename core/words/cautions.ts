/** What can hurt at each station (common practice, no source), and what comes before anything said here. */
export const cautionWords = {
  'caution.first': 'The machine’s manual, local codes and proper training come first.',
  'caution.short': 'Under {least} long: never hand-feed it; use a carrier.',
  'caution.milling.1': 'Only flat, straight stock goes over the jointer and through the planer.',
  'caution.milling.2':
    'Nothing shorter than the planer’s least length: cut short parts from a long piece afterwards.',
  'caution.milling.3': 'Push blocks on the jointer; face and edge true before thickness.',
  'caution.band-saw.1': 'Guard down to the stock; a blade narrow enough for the radius.',
  'caution.band-saw.2': 'Hands out of the line of the cut; stop the saw before backing out of it.',
  'caution.band-saw.3': 'The carrier and its pivot fixed before the blade runs.',
  'caution.spindle-sander.1': 'Feed against the drum’s rotation and keep the rail moving.',
  'caution.spindle-sander.2': 'The rail lies on its face, flat on the table; the gap at the drum closed.',
  'caution.spindle-sander.3': 'Dust extraction running and a mask on.',
  'caution.router-table.1': 'Feed against the cutter’s rotation; never between cutter and fence.',
  'caution.router-table.2': 'With a bearing cutter start from the pin; light passes; end grain backed.',
  'caution.router-table.3': 'Short pieces in a carrier; a large raising cutter at low speed.',
  'caution.table-saw.1':
    'Unplug the saw to change blade or tilt; guard and splitter wherever the cut allows.',
  'caution.table-saw.2':
    'A stopped rip: against the stop, switch off, wait until the blade stands; never draw back on a running one.',
  'caution.table-saw.3':
    'Never fence and mitre gauge together on a through cut; loose triangles out with the saw stopped.',
  'caution.table-saw.4': 'Push stick and featherboard; tilt and height proved on scrap.',
  'caution.mortiser.1': 'Clamp the work down and back; chisel and bit with their gap set.',
  'caution.mortiser.2': 'The two ends first, then between them; clear chips often.',
  'caution.mortiser.3': 'Hands off the column and the work while the chisel moves.',
  'caution.bench.1': 'Both hands behind the edge.',
  'caution.bench.2': 'The work held by vise or cramp, never by a hand.',
  'caution.bench.3': 'The guide block clamped before the chisel touches the mitre.',
  'caution.assembly.1': 'No glue in the groove or on the panel: it must stay free.',
  'caution.assembly.2': 'Both diagonals equal and no wind, before the glue sets.',
  'caution.assembly.3':
    'A large door is lifted by two; clamps are tightened evenly, fingers out of the joint.',
  'caution.fitting.1': 'The door propped or cramped before it is planed or sawn.',
  'caution.fitting.2': 'Plane from the ends inward, so that no corner breaks out.',
  'caution.fitting.3': 'The hinge side is checked first; take a little, and try the door again.',
} as const;

/** The cautions of a station, in order, as keys. */
export function cautionKeys(station: string): (keyof typeof cautionWords)[] {
  return (Object.keys(cautionWords) as (keyof typeof cautionWords)[]).filter((key) =>
    key.startsWith(`caution.${station}.`),
  );
}
