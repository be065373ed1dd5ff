import { Mod37_36 } from '@konfirm/iso7064';
import { sha256 } from '@noble/hashes/sha2.js';
import { utf8ToBytes } from '@noble/hashes/utils.js';

const ALPHABET = '0123456789ABCDEFGHJKLMNPQRSTUVWX';
const LENGTH = 9;

/** Which blank a code stands for: the part of one door of a job, and how often it was made anew. */
export interface CodedPart {
  /** The job's id, or else its name. */
  readonly job: string;
  readonly mark: string;
  /** Which of the doors of that mark, from 1. */
  readonly k: number;
  readonly part: string;
  /** 0 for the first blank, 1 for its first replacement … */
  readonly replacement: number;
}

/**
 * The code on a part's sticker: nine characters from SHA-256 of what the part is (never of its dimensions), without
 * I, O, Y and Z, then the check character of ISO/IEC 7064 MOD 37,36.
 */
export function partCode(part: CodedPart): string {
  const named = JSON.stringify([part.job, part.mark, part.k, part.part, part.replacement]);
  const digest = sha256(utf8ToBytes(named));
  let body = '';
  for (let k = 0; k < LENGTH; k += 1) body += ALPHABET[(digest[k] ?? 0) & 31] ?? '0';
  return body + Mod37_36.checksum(body);
}
