/** What can hurt at the bench: chisel, saw and finish. */
export const benchCautions = {
  'caution.pare.vise': 'Stile in the vise, both hands behind the chisel’s cutting edge; push away from you.',
  'caution.pare.sharp': 'Sharp chisel, thin slices: one that must be forced slips out of the mortise.',
  'caution.pare.wrist': 'Keep thumb and wrist out of the chisel’s way along the mortise’s wall.',
  'caution.clean.block': 'Clamp work and guide block together; both hands behind the chisel’s cutting edge.',
  'caution.clean.thin': 'Thin slices: a thick one splits past the line, and the chisel jumps after it.',
  'caution.clean.tip': 'The miter’s tip is short grain: pare toward the wood, never toward your fingers.',
  'caution.haunch.saw': 'Rail in the vise; the thumb that guides the saw stays well above its teeth.',
  'caution.haunch.pare':
    'Pare across the haunch from both edges, both hands behind the chisel’s cutting edge.',
  'caution.haunch.split': 'Short grain: no blows beside the tenon. It splits, and the chisel goes through.',
  'caution.finish.rags':
    'Oily rags catch fire by themselves: spread them flat to dry, or into a lidded metal can.',
  'caution.finish.air': 'Fresh air, no flame, no spark; wear the mask that the finish calls for.',
  'caution.finish.skin': 'Gloves and goggles for solvents; read the can and its safety data sheet first.',
} as const;
