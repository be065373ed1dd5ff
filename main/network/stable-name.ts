import type { MdnsVoice } from './mdns-voice.ts';

/** So long it is listened for who answers to the name (RFC 6762 section 8.1 asks for three quarters of a second). */
const LISTEN_MS = 800;

/** What is known of a name: it leads here, it leads to another machine, or nobody answers to it. */
type Found = 'here' | 'elsewhere' | 'nobody';

/**
 * The one name that stays when this machine's addresses change ("planer-pc.local"). Where the machine answers to it already
 * it is used as it is; where nobody does, it is announced here, at the addresses alone at which the network listens; where
 * another machine does, there is none.
 */
export class StableName {
  #voices: readonly MdnsVoice[] = [];
  #addresses: readonly string[] = [];
  #name: string | null = null;
  #announced = false;
  #stands = false;
  /** Addresses that were told since it was asked last. */
  readonly #heard = new Set<string>();
  #turn: Promise<void> = Promise.resolve();
  readonly #listenMs: number;

  constructor(listenMs = LISTEN_MS) {
    this.#listenMs = listenMs;
  }

  /** The name, where it leads here now. */
  get stands(): string | null {
    return this.#stands ? this.#name : null;
  }

  /** Looks after the name at these addresses; null ends it. Never rejects. */
  follow(name: string | null, addresses: readonly string[]): Promise<void> {
    this.#turn = this.#turn.then(() => this.#follow(name, addresses)).catch(() => this.#end());
    return this.#turn;
  }

  close(): Promise<void> {
    return this.follow(null, []);
  }

  async #follow(name: string | null, addresses: readonly string[]): Promise<void> {
    const same = name === this.#name && addresses.join() === this.#addresses.join();
    if (same && this.#announced && this.#stands) return;
    await this.#end();
    if (name === null) return;
    this.#name = name;
    this.#addresses = addresses;
    // A hub without a network never loads it.
    const { MdnsVoice: Voice } = await import('./mdns-voice.ts');
    this.#voices = addresses.map(
      (address) =>
        new Voice(
          name,
          address,
          (heard) => this.#hear(heard),
          () => (this.#stands = false),
        ),
    );
    let found = await this.#ask();
    if (found === 'nobody') {
      for (const voice of this.#voices) voice.begin();
      this.#announced = true;
      found = await this.#ask();
    }
    this.#stands = found === 'here';
  }

  #hear(address: string): void {
    this.#heard.add(address);
    // Another machine calls itself so: nobody is to be led to it from here.
    if (!this.#addresses.includes(address)) this.#stands = false;
  }

  async #ask(): Promise<Found> {
    this.#heard.clear();
    for (const voice of this.#voices) voice.ask();
    await new Promise((over) => setTimeout(over, this.#listenMs));
    const heard = [...this.#heard];
    if (heard.some((address) => !this.#addresses.includes(address))) return 'elsewhere';
    return heard.length === 0 ? 'nobody' : 'here';
  }

  async #end(): Promise<void> {
    const voices = this.#voices;
    this.#voices = [];
    this.#announced = false;
    this.#stands = false;
    this.#name = null;
    await Promise.all(voices.map((voice) => voice.end()));
  }
}
