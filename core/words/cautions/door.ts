/** What can hurt where a door is put together, glued and fitted. */
export const doorCautions = {
  'caution.dryfit.fingers': 'Fingers out of every joint before a clamp is turned; tighten evenly.',
  'caution.dryfit.force':
    'Never drive a tight tenon in: the stile splits, and the clamp lets go. Ease it, try again.',
  'caution.dryfit.lift': 'Dry, only the clamps hold it: leave it lying, or turn it with two people.',
  'caution.glue.lift': 'Two people turn a large door in its clamps; fingers out of the joints.',
  'caution.glue.clamps': 'Tighten clamps evenly, a little at a time: one that slips off springs back.',
  'caution.glue.skin':
    'Glue that sets by itself harms skin and eyes: gloves, goggles, fresh air; read its sheet.',
  'caution.trim.fall': 'Wedge or clamp the door so that it cannot fall before you plane or saw it.',
  'caution.trim.tool': 'Power saw or plane: both hands on it; set it down only when it has stopped.',
  'caution.trim.horns':
    'Hold the horn while it is sawn off: falling, it tears the stile, and lands on a foot.',
  'caution.trim.hang': 'Two people hang a large door; wedges under it, fingers out of the hinge side.',
} as const;
