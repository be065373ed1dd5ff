import { createCanvas, loadImage } from '@napi-rs/canvas';
import { readFileSync, writeFileSync } from 'node:fs';

/**
 * Draws the mark in the sizes that home screens ask for, beside it: `node main/start/draw-icons.mjs` after a change of mark.svg.
 * All of it stands in the middle four fifths, so that a round mask cuts none of the door.
 */
const beside = (name) => new URL(`../../ui/install/${name}`, import.meta.url);
const mark = readFileSync(beside('mark.svg'), 'utf8');
for (const size of [180, 192, 512]) {
  const image = await loadImage(Buffer.from(mark.replace('<svg ', `<svg width="${size}" height="${size}" `)));
  const canvas = createCanvas(size, size);
  canvas.getContext('2d').drawImage(image, 0, 0, size, size);
  writeFileSync(beside(`icon-${size}.png`), canvas.toBuffer('image/png'));
}
