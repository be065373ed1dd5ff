/**
 * The end of the stile from which the settings of a place are measured: those of the place `top` from the top end, all
 * others, a mid rail's too, from the bottom end.
 */
export function placeEnd(at: string): 'top' | 'bottom' {
  return at === 'top' ? 'top' : 'bottom';
}
