/** An event source as browsers have it (HTML Standard, section 9.2), over fetch, as far as these tests need one; it never comes back by itself. */
export class FetchedEvents extends EventTarget {
  /** Every address that was asked for. */
  static readonly asked: string[] = [];
  readonly #gone = new AbortController();

  constructor(address: string) {
    super();
    FetchedEvents.asked.push(address);
    this.#read(address).then(
      () => this.#failed(),
      () => this.#failed(),
    );
  }

  close(): void {
    this.#gone.abort();
  }

  #failed(): void {
    if (!this.#gone.signal.aborted) this.dispatchEvent(new Event('error'));
  }

  async #read(address: string): Promise<void> {
    const answer = await fetch(address, { signal: this.#gone.signal });
    const reader = answer.body?.pipeThrough(new TextDecoderStream()).getReader();
    let text = '';
    for (let read = await reader?.read(); read?.done === false; read = await reader?.read()) {
      text += read.value;
      const pieces = text.split('\n\n');
      text = pieces.pop() ?? '';
      for (const piece of pieces) this.#tell(piece);
    }
  }

  #tell(piece: string): void {
    const said = new Map(
      piece
        .split('\n')
        .map((line): [string, string] => [line.replace(/:.*/s, ''), line.replace(/^\w+: /, '')]),
    );
    this.dispatchEvent(new MessageEvent(said.get('event') ?? 'message', { data: said.get('data') }));
  }
}
