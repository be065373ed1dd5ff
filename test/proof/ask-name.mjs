/**
 * Another machine in the shop's network. `ask NAME` prints as JSON which addresses answer to a name by multicast DNS: to one
 * who takes part in it, and to one who only asks. `be NAME ADDRESS` answers to it itself until it is ended. `get URL ADDRESS
 * CA` opens a page by its name at that address, as a browser that trusts the authority, and prints its status.
 */
import { createSocket } from 'node:dgram';
import { readFileSync } from 'node:fs';
import { request } from 'node:https';
import packet from 'dns-packet';
import mdns from 'multicast-dns';

const [what, name, address, ca] = process.argv.slice(2);
const LISTEN_MS = 1500;
const found = ({ answers }) =>
  answers.filter((each) => each.type === 'A' && each.name === name && each.ttl > 0).map(({ data }) => data);

if (what === 'be') {
  const line = mdns();
  line.on('query', ({ questions }) => {
    if (questions.some((each) => each.name === name))
      line.respond([{ name, type: 'A', ttl: 120, data: address }]);
  });
  line.on('ready', () => process.stdout.write('ready\n'));
} else if (what === 'get') {
  const asked = request(
    name,
    {
      ca: readFileSync(ca),
      lookup: (_host, options, done) =>
        options.all ? done(null, [{ address, family: 4 }]) : done(null, address, 4),
    },
    (answer) => {
      process.stdout.write(String(answer.statusCode));
      answer.resume();
    },
  );
  asked.on('error', (error) => process.stdout.write(error.message));
  asked.end();
} else {
  const [partner, asker] = [new Set(), new Set()];
  const line = mdns();
  line.on('response', (answer) => found(answer).forEach((each) => partner.add(each)));
  line.query([{ name, type: 'A' }]);
  const once = createSocket('udp4');
  once.on('message', (message) => found(packet.decode(message)).forEach((each) => asker.add(each)));
  once.bind(0, () =>
    once.send(packet.encode({ id: 7, type: 'query', questions: [{ name, type: 'A' }] }), 5353, '224.0.0.251'),
  );
  setTimeout(() => {
    process.stdout.write(JSON.stringify({ partner: [...partner].sort(), asker: [...asker].sort() }));
    process.exit(0);
  }, LISTEN_MS);
}
