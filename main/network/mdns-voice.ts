import type { RemoteInfo } from 'node:dgram';
import mdns, { type MulticastDNS, type QueryPacket, type ResponsePacket } from 'multicast-dns';

/** For how long others keep an address, in seconds (RFC 6762 section 10); a resolver that asks once only ten (section 6.7). */
const TTL_S = 120;
const ONCE_TTL_S = 10;
const PORT = 5353;

/** One address of this machine that speaks multicast DNS (RFC 6762) on its own interface, about one name. */
export class MdnsVoice {
  readonly #name: string;
  readonly #address: string;
  readonly #line: MulticastDNS;
  #answers = false;

  /** `heard` is told each address that anybody on that interface says the name has, `failed` why nothing can be heard. */
  constructor(
    name: string,
    address: string,
    heard: (address: string) => void,
    failed: (error: Error) => void,
  ) {
    this.#name = name;
    this.#address = address;
    this.#line = mdns({ interface: address, bind: '0.0.0.0' });
    this.#line.on('error', failed);
    this.#line.on('warning', () => undefined);
    this.#line.on('query', (packet, from) => this.#answer(packet, from));
    this.#line.on('response', ({ answers = [], additionals = [] }: ResponsePacket) => {
      for (const each of [...answers, ...additionals])
        if (each.type === 'A' && this.#isName(each.name) && (each.ttl ?? 0) > 0) heard(each.data);
    });
  }

  /** Asks everybody on the interface for the name. */
  ask(): void {
    this.#line.query([{ name: this.#name, type: 'A' }]);
  }

  /** From now on answers to the name, and says so. */
  begin(): void {
    this.#answers = true;
    this.#line.respond(this.#record(TTL_S));
  }

  /** Takes the name back, and hears nothing more. */
  end(): Promise<void> {
    const over = () => new Promise<void>((done) => this.#line.destroy(() => done()));
    if (!this.#answers) return over();
    this.#answers = false;
    return new Promise((done) => this.#line.respond(this.#record(0), () => void over().then(done)));
  }

  #answer({ id, questions = [] }: QueryPacket, from: RemoteInfo): void {
    if (!this.#answers) return;
    const asked = questions.filter(({ name, type }) => this.#isName(name) && ASKED.has(type));
    if (asked.length === 0) return;
    // Who asks from another port is no party to multicast DNS: it is answered alone, with what it asked.
    if (from.port === PORT) this.#line.respond(this.#record(TTL_S));
    else this.#line.respond({ id, questions: asked, ...this.#record(ONCE_TTL_S, false) }, from);
  }

  /** The address, and that there is none of the other kind, so that nobody waits for it (RFC 6762 section 6.1). */
  #record(ttl: number, flush = true) {
    const name = this.#name;
    return {
      answers: [{ name, type: 'A' as const, ttl, flush, data: this.#address }],
      additionals: [
        { name, type: 'NSEC' as const, ttl, flush, data: { nextDomain: name, rrtypes: ['A' as const] } },
      ],
    };
  }

  #isName(name: string): boolean {
    return name.toLowerCase() === this.#name;
  }
}

const ASKED: ReadonlySet<string> = new Set(['A', 'AAAA', 'ANY']);
