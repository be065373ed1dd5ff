/** One tone: pitch in hertz, and how long in milliseconds. Pitch 0 is a rest. */
export type Tone = readonly [pitch: number, milliseconds: number];

/** Each kind of answer has a run of its own, told apart by rhythm as well as by pitch, beside a running machine. */
export const SOUNDS: Readonly<Record<string, readonly Tone[]>> = {
  setup: [[1320, 70]],
  done: [
    [880, 70],
    [1320, 110],
  ],
  undone: [
    [1320, 70],
    [880, 110],
  ],
  'wrong-station': [
    [440, 160],
    [0, 60],
    [440, 160],
  ],
  'stage-not-reached': [
    [520, 120],
    [390, 120],
    [290, 240],
  ],
  'already-done': [
    [660, 80],
    [0, 40],
    [660, 80],
    [0, 40],
    [660, 80],
  ],
  spoiled: [[180, 700]],
  'unknown-code': [
    [300, 90],
    [0, 50],
    [300, 90],
    [0, 50],
    [300, 90],
    [0, 50],
    [300, 90],
  ],
  binned: [
    [300, 90],
    [0, 50],
    [300, 90],
    [0, 50],
    [220, 360],
  ],
  'other-door': [
    [390, 120],
    [520, 120],
    [390, 240],
  ],
  finished: [
    [660, 120],
    [880, 120],
    [1100, 240],
  ],
};
const OTHER: readonly Tone[] = [[250, 350]];
const LOUDNESS = 0.2;

let context: AudioContext | null = null;

/** Plays the sound of an answer. A browser that does not let the page make a sound stays silent. */
export function play(kind: string): void {
  if (typeof AudioContext === 'undefined') return;
  context ??= new AudioContext();
  if (context.state === 'suspended') void context.resume().catch(() => undefined);
  let at = context.currentTime;
  for (const [pitch, milliseconds] of Object.hasOwn(SOUNDS, kind) ? (SOUNDS[kind] ?? OTHER) : OTHER) {
    const long = milliseconds / 1000;
    if (pitch > 0) {
      const tone = new OscillatorNode(context, { type: 'triangle', frequency: pitch });
      const volume = new GainNode(context, { gain: LOUDNESS });
      tone.connect(volume).connect(context.destination);
      tone.start(at);
      tone.stop(at + long);
    }
    at += long;
  }
}
