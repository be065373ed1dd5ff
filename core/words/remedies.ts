/** What would do for a panel that moves more than its groove allows, and for a stile that came out too short. */
export const remedyWords = {
  'remedy.clearance': 'a clearance of {clearance} would do',
  'remedy.groove': 'a clearance of {clearance} in a groove {depth} deep would do',
  'remedy.horn': 'horns of {horn} at both ends would do, or a new one',
  'remedy.new-part': 'a new one is needed to keep it whole',
  'remedy.none':
    'no groove of this frame is deep enough for it: quarter-sawn stock, another wood or a narrower door',
} as const;
