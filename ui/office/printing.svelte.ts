import type { PrintedOnce, PrinterLine, PrintRequest, PrintState } from '#core/api/prints-api.ts';
import type { StockLine } from '#core/api/stocks-api.ts';
import { say } from '#core/words/say.ts';
import { ask } from '../hub/client.ts';
import { followPrint } from './follow-print.ts';
import { person } from '../people/person.svelte.ts';
import { screenMemory } from '../screen-memory.ts';

/** The badge of who works at this screen, where that is known. */
function byWhom(): { by?: string } {
  return person.badge === null ? {} : { by: person.badge };
}

const CHOSEN = 'shoulderline.printer';

/** The stocks and printers here, a job's print on its way, and when each of its stickers was printed. */
export class Printing {
  stocks = $state.raw<readonly StockLine[]>([]);
  printers = $state.raw<readonly PrinterLine[]>([]);
  printer = $state(screenMemory.getItem(CHOSEN) ?? '');
  print = $state.raw<PrintState | null>(null);
  message = $state('');
  /** True while a print is on its way. */
  busy = $state(false);
  printed = $state.raw<Readonly<Record<string, readonly PrintedOnce[]>>>({});
  readonly #job: string;
  #id: string | null = null;

  constructor(job: string) {
    this.#job = job;
  }

  async load(): Promise<void> {
    const [stocks, printers] = await Promise.all([
      ask('GET /stocks'),
      ask('GET /printers'),
      this.loadPrinted(),
    ]);
    if (stocks.kind === 'ok') this.stocks = stocks.value.stocks;
    if (printers.kind === 'ok') {
      this.printers = printers.value.printers;
      this.message = printers.value.message ?? '';
      if (!this.printers.some(({ name }) => name === this.printer))
        this.printer =
          this.printers.find(({ accepting, state }) => accepting && state !== 'stopped')?.name ?? '';
    } else this.message = say('ui.hub-away');
  }

  /** Asks again when each sticker was printed: another screen may have done it. */
  async loadPrinted(): Promise<void> {
    const printed = await ask('GET /jobs/:id/printed', { params: { id: this.#job } });
    if (printed.kind === 'ok') this.printed = printed.value.codes;
  }

  /** Prints and follows until it is out of the printer or is not. */
  async send(request: Omit<PrintRequest, 'job' | 'printer'>): Promise<void> {
    if (this.busy || this.printer === '') return;
    screenMemory.setItem(CHOSEN, this.printer);
    this.message = '';
    this.busy = true;
    const taken = await ask('POST /prints', {
      body: { ...request, ...byWhom(), job: this.#job, printer: this.printer },
    });
    if (taken.kind !== 'ok') {
      this.message = taken.kind === 'refused' ? taken.refusal.message : say('ui.hub-away');
      this.busy = false;
      return;
    }
    this.#id = taken.value.id;
    this.print = { state: 'making', made: 0, of: 0 };
    await followPrint(taken.value.id, (state) => (this.print = state));
    this.#id = null;
    this.busy = false;
    // Not waited for: what is tapped meanwhile belongs to the next print.
    void this.load();
  }

  /** Keeps stickers as printed that left a printer by the browser's own dialog; false where that could not be kept. */
  async report(codes: readonly string[], stock: string): Promise<boolean> {
    const answer = await ask('POST /jobs/:id/printed', {
      params: { id: this.#job },
      body: { codes, stock, ...byWhom() },
    });
    this.print = null;
    if (answer.kind === 'ok') {
      this.printed = answer.value.codes;
      this.message = say('print.kept');
      return true;
    }
    this.message = answer.kind === 'refused' ? answer.refusal.message : say('ui.hub-away');
    return false;
  }

  async cancel(): Promise<void> {
    if (this.#id !== null) await ask('DELETE /prints/:id', { params: { id: this.#id } });
  }
}
