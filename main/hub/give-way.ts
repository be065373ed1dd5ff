/** Lets marks and screens have their turn while a long paper is made. */
export function giveWay(): Promise<void> {
  return new Promise((turn) => setImmediate(turn));
}
