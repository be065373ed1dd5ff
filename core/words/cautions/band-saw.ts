/** What can hurt where curves are sawn, and where the sawn curve is sanded. */
export const bandSawCautions = {
  'caution.arch.hands': 'Hands beside the cut, never in the blade’s path; guard just above the rail.',
  'caution.arch.blade':
    'This radius takes no blade wider than {widestBlade}: a wider one binds, twists and can break.',
  'caution.arch.carrier': 'Clamp carrier and pivot before the blade runs; swing the rail without forcing it.',
  'caution.arch.back':
    'Saw relief cuts into the waste first. Before backing out, switch off and wait until the blade has stopped.',
  'caution.cutout.guard':
    'Thin panel: bring the guard right down to it. Hands beside the cut, never in the blade’s path.',
  'caution.cutout.blade':
    'This radius takes no blade wider than {widestBlade}: a wider one binds, and the panel is pulled aside.',
  'caution.cutout.support':
    'Support the panel where it hangs over the table: if it tips, the blade grabs it.',
  'caution.cutout.waste':
    'Saw the corners off in pieces, with relief cuts. Stop the saw before you take waste off the table.',
  'caution.smooth.feed': 'Feed against the drum’s rotation: fed with it, the rail is torn out of your hands.',
  'caution.smooth.fingers':
    'Hold the rail at both feet, flat on the table; no finger in the arch beside the drum.',
  'caution.smooth.springing':
    'Touch the drum with the curve, not with the corner where flat meets arc: the corner catches.',
  'caution.smooth.dust': 'Sanding dust is fine enough to reach the lungs: extraction on, mask on.',
} as const;
