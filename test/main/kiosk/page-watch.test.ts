import { PassThrough } from 'node:stream';
import { expect, test, vi } from 'vitest';
import { DevToolsPipe } from '#main/kiosk/devtools-pipe.ts';
import { PageWatch } from '#main/kiosk/page-watch.ts';

/** A browser's side of the pipe, which answers what it is asked for; `asked` are the commands in order. */
function browser(answer: (method: string) => object | Error = () => ({})) {
  const [to, from] = [new PassThrough(), new PassThrough()];
  const asked: string[] = [];
  const tell = (message: object, ...pieces: number[]) => {
    const text = `${JSON.stringify(message)}\0`;
    const cut = pieces[0] ?? text.length;
    from.write(text.slice(0, cut));
    from.write(text.slice(cut));
  };
  to.setEncoding('utf8');
  to.on('data', (text: string) => {
    for (const each of text.split('\0').filter((one) => one !== '')) {
      const { id, method, params, sessionId } = JSON.parse(each) as {
        id: number;
        method: string;
        params: object;
        sessionId?: string;
      };
      asked.push(`${method} ${JSON.stringify(params)}${sessionId === undefined ? '' : ` ${sessionId}`}`);
      const result = answer(method);
      tell(result instanceof Error ? { id, error: { message: result.message } } : { id, result }, 3);
    }
  });
  return { to, from, asked, tell, pipe: new DevToolsPipe(to, from) };
}

const page = (targetId: string, type = 'page') => ({
  method: 'Target.targetCreated',
  params: { targetInfo: { targetId, type, url: 'http://127.0.0.1/station' } },
});

test('the first page stays, every other is closed, and what is no page is left alone', async () => {
  const { pipe, asked, tell } = browser();
  new PageWatch(pipe, { mayLoad: () => false, failed: () => undefined });
  for (const each of [page('worker', 'service_worker'), page('one'), page('two'), page('one'), page('three')])
    tell(each);
  tell({ method: 'Target.targetCreated' });
  await vi.waitFor(() => expect(asked).toHaveLength(3));
  expect(asked).toEqual([
    'Target.setDiscoverTargets {"discover":true}',
    'Target.closeTarget {"targetId":"two"}',
    'Target.closeTarget {"targetId":"three"}',
  ]);
});

test('a page that crashed goes to its address again, where it may; another’s crash is nothing', async () => {
  const { pipe, asked, tell } = browser((method) =>
    method === 'Target.getTargetInfo' ? page('one').params : { sessionId: 'S' },
  );
  let left = 1;
  new PageWatch(pipe, { mayLoad: () => left-- > 0, failed: () => undefined });
  tell(page('one'));
  for (const targetId of ['two', 'one', 'one'])
    tell({ method: 'Target.targetCrashed', params: { targetId } });
  await vi.waitFor(() => expect(asked).toHaveLength(5));
  expect(left).toBe(-1);
  expect(asked.slice(1)).toEqual([
    'Target.getTargetInfo {"targetId":"one"}',
    'Target.attachToTarget {"targetId":"one","flatten":true}',
    'Page.navigate {"url":"http://127.0.0.1/station"} S',
    'Target.detachFromTarget {"sessionId":"S"}',
  ]);
});

test('what the browser says against a command is told, and its end too', async () => {
  const refusing = browser(() => new Error('no such page'));
  await expect(refusing.pipe.send('Target.closeTarget')).rejects.toThrow('no such page');
  const silent = new PassThrough();
  const pipe = new DevToolsPipe(new PassThrough(), silent);
  const asked = pipe.send('Browser.getVersion');
  silent.write('no JSON\0{"id":"x"}\0');
  silent.destroy();
  await expect(asked).rejects.toThrow('the browser has ended');
});
