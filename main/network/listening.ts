import { createServer, type Server, type Socket } from 'node:net';
import type { Strangers } from './strangers.ts';

/** More connections than a shop has screens are not taken. */
const MOST_CONNECTIONS = 400;

/** Several addresses that one server is asked at, all by the same port. */
export interface Listening {
  readonly port: number;
  /** Lets in who comes; whoever came before waits for that. */
  open(): void;
  /** Ends it, with every connection that came in by it. */
  close(): Promise<void>;
}

/** Hands each connection to one of these addresses on to a server, as `strangers` let it. Port 0 takes any that is free. All of them listen, or it rejects and none does. Nobody is let in until it is opened. */
export async function listenAt(
  addresses: readonly string[],
  port: number,
  onto: { emit(event: 'connection', socket: Socket): boolean },
  strangers: Strangers,
): Promise<Listening> {
  const sockets = new Set<Socket>();
  const servers: Server[] = [];
  const close = async () => {
    const ended = servers.map((server) => new Promise<void>((over) => server.close(() => over())));
    for (const socket of sockets) socket.destroy();
    await Promise.all(ended);
  };
  let open: () => void = () => undefined;
  const opened = new Promise<void>((done) => (open = done));
  let taken = port;
  try {
    for (const address of addresses) {
      // Of whoever is not let in nothing is read.
      const server = createServer({ pauseOnConnect: true }, (socket) => {
        sockets.add(socket);
        socket.once('close', () => sockets.delete(socket));
        socket.on('error', () => undefined);
        const handOn = () => {
          onto.emit('connection', socket);
          socket.resume();
        };
        void opened.then(() => strangers.meet(socket, handOn));
      });
      server.maxConnections = MOST_CONNECTIONS;
      taken = await listening(server, address, taken);
      servers.push(server);
    }
  } catch (error) {
    await close();
    throw error;
  }
  return { port: taken, open, close };
}

function listening(server: Server, host: string, port: number): Promise<number> {
  return new Promise((done, failed) => {
    server.once('error', failed);
    server.listen({ host, port }, () => {
      server.off('error', failed);
      server.on('error', () => undefined);
      const bound = server.address();
      done(typeof bound === 'object' && bound !== null ? bound.port : port);
    });
  });
}
