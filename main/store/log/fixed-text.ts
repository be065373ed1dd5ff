/** A text that stands in many lines, in words of four bytes; the last word ends with it and may overlap the one before. */
export interface FixedText {
  readonly length: number;
  readonly words: Int32Array;
  readonly last: number;
}

/** An ASCII text of four signs at least. */
export function fixedText(text: string): FixedText {
  const bytes = new TextEncoder().encode(text);
  const view = new DataView(bytes.buffer);
  return {
    length: text.length,
    words: Int32Array.from({ length: text.length >> 2 }, (_, k) => view.getInt32(4 * k)),
    last: view.getInt32(text.length - 4),
  };
}

/** Does this text stand at a place? Compared four bytes at a time. */
export function standsAt(text: FixedText, view: DataView, at: number): boolean {
  if (at + text.length > view.byteLength) return false;
  const { words } = text;
  for (let k = 0; k < words.length; k += 1) if (view.getInt32(at + 4 * k) !== words[k]) return false;
  return view.getInt32(at + text.length - 4) === text.last;
}

let viewed: Uint8Array | null = null;
let view: DataView = new DataView(new ArrayBuffer(0));

/** These bytes as words; of the same bytes as the last time the same view. */
export function viewOf(bytes: Uint8Array): DataView {
  if (bytes !== viewed) {
    viewed = bytes;
    view = new DataView(bytes.buffer, bytes.byteOffset, bytes.length);
  }
  return view;
}
