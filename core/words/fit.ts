/** How the parts of a door close, by the shop's own ±: for the office and the command line. */
export const fitWords = {
  'office.fit.title': 'Does it all close?',
  'office.fit.open': 'Does it close?',
  'office.fit.note':
    'Room between parts, from the plan and from how near your shop comes to a setting (Shop, Tools). At worst: everything off at once, to the wrong side. Likely: as much of it as usually comes together.',
  'office.fit.what': 'What meets',
  'office.fit.exact': 'Exact room',
  'office.fit.needs': 'Needs',
  'office.fit.worst': 'At worst',
  'office.fit.likely': 'Likely',
  'office.fit.watch': 'Watch',
  'office.fit.range': '{least} to {most}',
  'office.fit.at-least': '{least} or more',
  'office.fit.at-most': '{most} or less',
  'office.fit.between': '{least} to {most}',
  'office.fit.watched': '{part}: {setting}, {stage}',
  'office.fit.all-closes': 'Everything closes, at worst too.',
  'office.fit.by-luck':
    '{what}: it closes only by luck. At worst {worst}, and it needs {needs}; likely {likely}. Watch {watch}.',
  'office.fit.unlikely':
    '{what}: do not count on it. Likely {likely}, and it needs {needs}. Watch {watch}, and try it against the part that it goes with.',
  'office.fit.apart':
    '{what}: it does not close as planned. It has {exact}, and it needs {needs}. Look at {watch} first.',
  'office.fit.of.shoulders': 'Gap at a shoulder, longest rail against shortest',
  'office.fit.of.tenon-groove': 'Tenon loose in its groove',
  'office.fit.of.tenon-ends': 'Tenon between the ends of its mortise',
  'office.fit.of.mortise-floor': 'Tenon’s end to the floor of its mortise',
  'office.fit.of.haunch': 'Haunch to the floor of its groove',
  'office.fit.of.mitres': 'Wood left to pare at a miter',
  'office.fit.of.mid-mitres': 'Wood left to fit a mid rail between its miters',
  'office.fit.of.panel-width': 'Panel across, groove floor to groove floor',
  'office.fit.of.panel-length': 'Panel lengthwise, groove floor to groove floor',
  'office.fit.of.outside-width': 'Left to trim in width, both sides together',
  'office.fit.of.outside-height': 'Left to trim in height, both ends together',
  'office.fit.command.heading': '{doors} ({units})',
} as const;
