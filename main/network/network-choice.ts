import { join } from 'node:path';
import type { Low } from 'lowdb';
import { z } from 'zod';
import { putAside } from '../store/files/aside.ts';
import { openDocument } from '../store/files/document.ts';
import type { FilePort } from '../store/files/file-port.ts';
import { formatOf, migrate, NewerFormat } from '../store/files/migration.ts';

const NAME = 'network.json';
const FORMAT = 1;
const choiceDocument = z.object({ format: z.literal(FORMAT), on: z.boolean() });
type Choice = z.infer<typeof choiceDocument>;

/** Whether the office has switched the network on. A choice that cannot be read is kept aside, and the network is off. */
export class NetworkChoice {
  readonly #document: Low<Choice>;

  private constructor(document: Low<Choice>) {
    this.#document = document;
  }

  static async open(port: FilePort, data: string): Promise<NetworkChoice> {
    const path = join(data, NAME);
    const fresh: Choice = { format: FORMAT, on: false };
    try {
      return new NetworkChoice(await openDocument(port, path, readChoice, fresh));
    } catch (error) {
      if (error instanceof NewerFormat) throw error;
      await putAside(port, path, error);
      return new NetworkChoice(
        await openDocument({ ...port, read: () => Promise.resolve(null) }, path, readChoice, fresh),
      );
    }
  }

  get on(): boolean {
    return this.#document.data.on;
  }

  async choose(on: boolean): Promise<void> {
    const before = this.#document.data;
    if (before.on === on) return;
    this.#document.data = { format: FORMAT, on };
    try {
      await this.#document.write();
    } catch (error) {
      this.#document.data = before;
      throw error;
    }
  }
}

function readChoice(text: string): Choice {
  const read: unknown = JSON.parse(text);
  const format = formatOf(read);
  if (format > FORMAT) throw new NewerFormat('the choice of the network', format, FORMAT);
  return choiceDocument.parse(migrate(read, format, FORMAT, {}));
}
