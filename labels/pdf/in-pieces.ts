/** A word longer than a line, broken anywhere into pieces that fit one; a letter that does not stands alone all the same. */
export function inPieces(word: string, fits: (piece: string) => boolean): string[] {
  const pieces: string[] = [];
  let piece = '';
  for (const letter of word) {
    if (piece !== '' && !fits(piece + letter)) {
      pieces.push(piece);
      piece = '';
    }
    piece += letter;
  }
  return [...pieces, piece];
}
