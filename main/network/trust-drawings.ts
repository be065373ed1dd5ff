/** Kinds of device whose steps the trust page tells. */
export const DEVICE_KINDS = ['android', 'ios', 'windows', 'mac', 'linux'] as const;
export type DeviceKind = (typeof DEVICE_KINDS)[number];

/** Glass and frame of a device, in a picture 60 wide and 72 high: a telephone, or a screen on its foot. */
const PHONE = '<rect x="12" y="3" width="36" height="66" rx="5"/><path d="M26 64h8"/>';
const SCREEN = '<rect x="3" y="12" width="54" height="38" rx="3"/><path d="M30 50v10M18 60h24"/>';
/** What is done, about the middle of the glass. */
const SAVED = '<path d="M30 18v18M23 29l7 8 7-8M20 42h20"/>';
const LIST = '<path d="M20 22h20M20 31h20M20 40h12"/>';
const SWITCHED =
  '<rect x="18" y="25" width="24" height="13" rx="6.5"/><circle class="full" cx="35.5" cy="31.5" r="4.5"/>';
const SEAL =
  '<rect x="19" y="18" width="22" height="15"/><circle cx="30" cy="37" r="5"/><path d="M27 41v6l3-2 3 2v-6"/>';
const TICK = '<path d="M20 32l7 8 14-18"/>';

/** One picture for each step: the device, and what is seen or done on it. */
const STEPS: Readonly<Record<DeviceKind, readonly string[]>> = {
  android: [PHONE + SAVED, PHONE + LIST, PHONE + SEAL],
  ios: [PHONE + SAVED, PHONE + SEAL, PHONE + SWITCHED],
  windows: [SCREEN + raised(SAVED), SCREEN + raised(SEAL), SCREEN + raised(TICK)],
  mac: [SCREEN + raised(SAVED), SCREEN + raised(LIST), SCREEN + raised(TICK)],
  linux: [SCREEN + raised(SAVED), SCREEN + raised(LIST), SCREEN + raised(SEAL)],
};

/** The picture beside a step, as SVG; it adds nothing to the words, so that it is not read out. */
export function stepDrawing(kind: DeviceKind, step: number): string {
  const strokes = STEPS[kind][step] ?? '';
  return `<svg viewBox="0 0 60 72" width="60" height="72" aria-hidden="true">${strokes}</svg>`;
}

function raised(strokes: string): string {
  return `<g transform="translate(0 -1)">${strokes}</g>`;
}
