/** What would do for a panel that moves more than its groove allows. */
export const remedyWords = {
  'remedy.clearance': 'a clearance of {clearance} would do',
  'remedy.groove': 'a clearance of {clearance} in a groove {depth} deep would do',
  'remedy.none':
    'no groove of this frame is deep enough for it: quarter-sawn stock, another wood or a narrower door',
} as const;
