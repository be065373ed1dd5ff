/** What can hurt where mortises are cut. */
export const mortiserCautions = {
  'caution.mortise.clamped': 'Clamps hold the stile, not hands: fingers clear before the chisel moves.',
  'caution.mortise.turning':
    'No sleeve, hair or glove near the turning bit; brush chips away with the machine stopped.',
  'caution.mortise.jams': 'Deep mortise: plunge in steps. Packed chips smoke and jam the chisel in the wood.',
  'caution.mortise.depth': 'Set the depth stop switched off: the chisel must never reach table or vise.',
  'caution.mortise.long': 'Support the stile’s overhanging end: it must not tip when the clamp is let go.',
} as const;
