/** What is wrong with something typed, said of the field by its own label. */
export const formWords = {
  'told.empty': 'Still empty.',
  'told.length': 'No length: type it as {example}.',
  'told.comma': 'Write a point, not a comma: {example}.',
  'told.marks': 'This job is in millimetres: leave the foot and inch marks out.',
  'told.digits': 'Too many digits.',
  'told.over-nothing': 'A fraction cannot be over 0.',
  'told.long': 'Longer than anything here: {most} at most.',
  'told.negative': 'It cannot be less than 0.',
  'told.zero': 'It must be more than 0.',
} as const;
