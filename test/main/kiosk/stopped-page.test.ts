import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { lastLine } from '#main/kiosk/last-line.ts';
import { servePage } from '#main/kiosk/page-server.ts';
import { stoppedPage } from '#main/kiosk/stopped-page.ts';

let data = '';
beforeEach(() => (data = mkdtempSync(join(tmpdir(), 'shoulderline-kiosk-'))));
afterEach(() => rmSync(data, { recursive: true, force: true }));

const log = (text: string) => writeFileSync(join(data, 'hub.log'), text);
const page = () => stoppedPage({ what: 'hub', times: 5, how: 'code 1', data });

test('the log’s last line is read as a person reads it', () => {
  log(
    '{"level":30,"time":1,"msg":"before"}\n{"level":60,"time":1764000000000,"err":{"message":"no room"},"msg":"failed"}\n',
  );
  expect(lastLine(join(data, 'hub.log'))).toBe('2025-11-24T16:00:00.000Z failed: no room');
  log('{"level":60,"err":{"message":"no room"},"msg":"no room"}\n\n');
  expect(lastLine(join(data, 'hub.log'))).toBe('no room');
});

test('a line that is no entry is shown as it stands, one of a great log too; none is none', () => {
  log(`${'x'.repeat(300_000)}\nand {then\n`);
  expect(lastLine(join(data, 'hub.log'))).toBe('and {then');
  log('x'.repeat(300_000));
  expect(lastLine(join(data, 'hub.log'))).toHaveLength(400);
  log('\n');
  expect(lastLine(join(data, 'hub.log'))).toBeNull();
  expect(lastLine(join(data, 'gone.log'))).toBeNull();
});

test('the page says what happened, the log’s last line, how it ended and what to do, and holds no markup from a log', () => {
  log('<script>alert(1)</script>\n');
  const html = page();
  expect(html).toContain('The program on the shop computer has stopped');
  expect(html).toContain('5 times within a minute');
  expect(html).toContain('code 1');
  expect(html).toContain('&lt;script&gt;alert(1)');
  expect(html).not.toContain('<script>alert');
  expect(html).toContain(join(data, 'hub.log'));
  expect(html).toContain('>Try again</button>');
});

test('the page speaks the shop’s language; English where the shop’s file cannot be read', () => {
  writeFileSync(join(data, 'shop.json'), '{"format":3,"shop":{"language":"de"},"sum":"x"}');
  expect(page()).toContain('Das Programm auf dem Werkstattrechner läuft nicht mehr');
  writeFileSync(join(data, 'shop.json'), '{"format":3,"shop":{"lang');
  expect(page()).toContain('The log is empty or cannot be read.');
});

test('another try is asked for by the page itself, and by no other site’s', async () => {
  let asked = 0;
  const served = await servePage('<p>here', { again: () => (asked += 1) });
  const post = async (origin: string) =>
    (await fetch(`${served.url}/again`, { method: 'POST', headers: { origin } })).status;
  expect(await (await fetch(served.url)).text()).toBe('<p>here');
  expect(await post('http://example.org')).toBe(404);
  expect(asked).toBe(0);
  expect(await post(served.url)).toBe(204);
  expect(asked).toBe(1);
  expect((await fetch(`${served.url}/else`)).status).toBe(404);
  served.close();
  await expect(fetch(served.url)).rejects.toThrow();
});
