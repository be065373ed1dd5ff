import type { Symbols } from './decode.ts';

/** How often a picture is looked at. */
const LOOK_MS = 150;
/** The same symbol still in front of the camera is not a second scan until this long after the first. */
const AGAIN_MS = 2500;

/** Has this screen a camera? */
export async function hasCamera(): Promise<boolean> {
  const devices = (navigator as Partial<Navigator>).mediaDevices;
  if (devices === undefined) return false;
  const all = await devices.enumerateDevices().catch(() => []);
  return all.some(({ kind }) => kind === 'videoinput');
}

/** Which reads of a camera are scans: a symbol that stays in the picture counts once. */
export class SteadyReads {
  #last: { readonly text: string; readonly at: number } | null = null;

  /** Is this text, read at this time in milliseconds, a scan of its own? */
  take(text: string, at: number): boolean {
    const stays = this.#last?.text === text && at - this.#last.at < AGAIN_MS;
    this.#last = { text, at };
    return !stays;
  }
}

/**
 * Shows the camera in a video and calls back with every symbol of these that comes into its picture. The decoder is loaded only
 * now. Rejects when the camera cannot be had. Returns what ends it.
 */
export async function watchCamera(
  video: HTMLVideoElement,
  heard: (text: string) => void,
  symbols: Symbols = 'codes',
): Promise<() => void> {
  const { decode } = await import('./decode.ts');
  const stream = await navigator.mediaDevices.getUserMedia({
    video: { facingMode: 'environment', width: { ideal: 1280 } },
  });
  video.srcObject = stream;
  await video.play();
  const reads = new SteadyReads();
  let looking = false;
  const clock = setInterval(() => {
    if (looking) return;
    looking = true;
    void read(video, (picture) => decode(picture, symbols))
      .then((text) => {
        if (text !== null && reads.take(text, performance.now())) heard(text);
      })
      .catch(() => undefined)
      .finally(() => (looking = false));
  }, LOOK_MS);
  return () => {
    clearInterval(clock);
    for (const track of stream.getTracks()) track.stop();
    video.srcObject = null;
  };
}

async function read(
  video: HTMLVideoElement,
  decode: (picture: ImageData) => Promise<string | null>,
): Promise<string | null> {
  const { videoWidth: width, videoHeight: height } = video;
  const context = width === 0 ? null : new OffscreenCanvas(width, height).getContext('2d');
  if (context === null) return null;
  context.drawImage(video, 0, 0);
  return decode(context.getImageData(0, 0, width, height));
}
