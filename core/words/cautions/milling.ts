/** What can hurt where a blank is milled. */
export const millingCautions = {
  'caution.mill.hands':
    'Jointer: guard over the knives, push blocks in both hands, no hand over the cutterhead.',
  'caution.mill.planer': 'Planer: one piece at a time; stand beside it, and never reach in while it feeds.',
  'caution.mill.knots': 'Loose knots, splits and grit fly or grab: look for them first; take light cuts.',
} as const;
