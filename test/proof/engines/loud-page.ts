import { createServer } from 'node:http';
import { onTestFinished } from 'vitest';

/** Says an error and a warning, throws, and tries what its policy forbids: as it is loaded, and at each click. */
const LOUD = `function loud() {
  console.error('an error');
  console.warn('a warning');
  setTimeout(() => { throw new Error('an exception'); });
  try { new Function(''); } catch {}
}
loud();
document.querySelector('button').addEventListener('click', loud);`;

/** The address of a page with much to say on its console, until the test has ended. */
export async function loudPage(): Promise<string> {
  const server = createServer((request, answer) => {
    const script = request.url === '/loud.js';
    answer.setHeader('content-type', script ? 'text/javascript' : 'text/html');
    answer.setHeader('content-security-policy', "script-src 'self'");
    answer.end(
      script
        ? LOUD
        : '<!doctype html><title>Loud</title><button>Loud</button><script src="/loud.js"></script>',
    );
  });
  await new Promise<void>((listening) => server.listen(0, '127.0.0.1', listening));
  onTestFinished(() => void server.close());
  const address = server.address();
  return `http://127.0.0.1:${typeof address === 'object' ? address?.port : ''}/`;
}
