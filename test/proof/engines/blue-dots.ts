import { PNG } from 'pngjs';

/** So much more blue than anything else a dot is blue, of 255. */
const BLUE = 40;

/** How many dots of a picture are blue. */
export function blueDots(picture: Buffer): number {
  const { data } = PNG.sync.read(picture);
  let dots = 0;
  for (let at = 0; at < data.length; at += 4) {
    const [red = 0, green = 0, blue = 0] = data.subarray(at, at + 3);
    if (blue - Math.max(red, green) > BLUE) dots += 1;
  }
  return dots;
}
