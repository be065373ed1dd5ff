import type { FastifyReply } from 'fastify';
import { Readable } from 'node:stream';
import { Stretch } from '../store/files/stretch.ts';

export const JSON_TYPE = 'application/json; charset=utf-8';

/** Characters that go at once. */
const PIECE = 256 * 1024;

/** Answers with a text of JSON that was put together beforehand, at the pace at which it is read. */
export function jsonInPieces(reply: FastifyReply, texts: readonly string[]): FastifyReply {
  return reply.type(JSON_TYPE).send(Readable.from(pieces(texts)));
}

/** Answers with bytes of JSON, which many may be given, at the pace at which each reads them. */
export function bytesInPieces(reply: FastifyReply, bytes: Buffer): FastifyReply {
  const all = Array.from({ length: Math.ceil(bytes.length / PIECE) }, (_, k) =>
    bytes.subarray(k * PIECE, (k + 1) * PIECE),
  );
  return reply.type(JSON_TYPE).send(Readable.from(all));
}

function* pieces(texts: readonly string[]): Generator<Buffer> {
  let waiting: string[] = [];
  let length = 0;
  for (const text of texts)
    for (let at = 0; at < text.length || at === 0; at += PIECE) {
      const part = text.length <= PIECE ? text : text.slice(at, at + PIECE);
      waiting.push(part);
      length += part.length;
      if (length < PIECE) continue;
      yield Buffer.from(waiting.join(''));
      waiting = [];
      length = 0;
    }
  if (length > 0) yield Buffer.from(waiting.join(''));
}

/** The members of a JSON object, others getting their turn while they are put into text. */
export async function tableText(table: Iterable<readonly [key: string, value: unknown]>): Promise<string[]> {
  const texts: string[] = [];
  const stretch = new Stretch();
  for (const [key, value] of table) {
    texts.push(`${texts.length === 0 ? '' : ','}${JSON.stringify(key)}:${JSON.stringify(value)}`);
    await stretch.giveWay();
  }
  return texts;
}

/** The items of a JSON list likewise. */
export async function listText(list: Iterable<unknown>): Promise<string[]> {
  const texts: string[] = [];
  const stretch = new Stretch();
  for (const item of list) {
    texts.push(`${texts.length === 0 ? '' : ','}${JSON.stringify(item)}`);
    await stretch.giveWay();
  }
  return texts;
}
