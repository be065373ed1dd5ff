/** What is said where a door is fitted to its opening. */
export const fittingWords = {
  'drawing.trim': 'Door {door} from the front, with the line to trim to',
  'short.trim-finishedWidth': 'width after trimming',
  'short.trim-finishedHeight': 'height after trimming',
  'drawing.trim-times': 'what comes off, {times} times as large',
  'fit.off': 'Comes off, measured inward from each edge as it is now; horns first',
  'ui.group-surveyed': 'Each by its own survey: scan the door.',
  'fit.edge.left': 'Left edge',
  'fit.edge.right': 'Right edge',
  'fit.edge.bottom': 'Bottom edge',
  'fit.edge.top': 'Top edge',
  'fit.end.left': 'at its left',
  'fit.end.right': 'at its right',
  'fit.end.bottom': 'at its bottom',
  'fit.end.top': 'at its top',
  'fit.gap':
    'Do not trim: the door does not cover the opening at {where}. The figures with a minus are how much is missing there.',
  'fit.gap-here': '{edge}, {end}',
  'fit.why.from': '{edge} as built, {end}, square to that edge',
  'fit.why':
    'The opening as measured, less the reveal of each side, laid over the door: the hinge edge along that side of the opening, then shifted until the smallest amounts left and right are equal (where the reveals differ, by what is planned to come off there), and bottom and top.',
  'fit.why-gap': 'Below zero, so the door as built ends before the opening does.',
  'fit.asked': '{k} of 6: {measure}',
  'fit.next': 'Next measure',
  'fit.form': 'Type it as {example}.',
  'fit.from-front': 'Left and right as you stand before the front of the door, where the bead shows.',
  'fit.sketch': 'The opening, its six measures',
  'fit.ask-on': 'Measure on',
  'fit.check.good':
    'Good: the six measures agree. Worked out from the other five, “{measure}” differs by {apart}; up to {most} is fine.',
  'fit.check.again':
    'One of the six measures does not fit: they differ by {apart}; up to {most} is fine. Each says what it would be if it alone were wrong. Tap one to measure it again.',
  'fit.check.taken': 'One of the six measures does not fit: what comes off may be wrong.',
  'fit.misfit.off': 'differs by {off}',
  'fit.misfit.all-the-same': 'Show what comes off all the same',
  'fit.misfit.impossible':
    'These six measures make no opening. If one alone is wrong, it is one of these. Tap it to measure it again.',
  'fit.check.under': 'less than {least}',
  'fit.check.impossible':
    'These six measures make no opening. Measure again; the two diagonals may be swapped.',
} as const;
