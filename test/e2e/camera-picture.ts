import { createCanvas, loadImage } from '@napi-rs/canvas';

const WIDTH = 640;
const HEIGHT = 480;

/** A still camera picture as YUV4MPEG2, which Chromium plays as its camera: part of a PNG, enlarged, in greys. */
export async function cameraPicture(
  png: Buffer,
  from: { x: number; y: number; width: number; height: number },
): Promise<Buffer> {
  const image = await loadImage(png);
  const canvas = createCanvas(WIDTH, HEIGHT);
  const context = canvas.getContext('2d');
  context.fillStyle = '#fff';
  context.fillRect(0, 0, WIDTH, HEIGHT);
  const scale = Math.min(WIDTH / from.width, HEIGHT / from.height) * 0.9;
  const [width, height] = [from.width * scale, from.height * scale];
  context.drawImage(
    image,
    from.x,
    from.y,
    from.width,
    from.height,
    (WIDTH - width) / 2,
    (HEIGHT - height) / 2,
    width,
    height,
  );
  const { data } = context.getImageData(0, 0, WIDTH, HEIGHT);
  const luma = Buffer.alloc(WIDTH * HEIGHT);
  for (let k = 0; k < luma.length; k += 1) luma[k] = 16 + Math.round(((data[4 * k] ?? 0) * 219) / 255);
  const chroma = Buffer.alloc((WIDTH * HEIGHT) / 2, 128);
  const frame = Buffer.concat([Buffer.from('FRAME\n'), luma, chroma]);
  const head = Buffer.from(`YUV4MPEG2 W${WIDTH} H${HEIGHT} F10:1 Ip A1:1 C420jpeg\n`);
  return Buffer.concat([head, frame, frame, frame]);
}
