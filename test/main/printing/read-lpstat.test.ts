import { expect, test } from 'vitest';
import { readAccepting, readJobs, readPrinters } from '#main/printing/read-lpstat.ts';

/** What `lpstat -l -p` prints of every printer beside what is read here; "any" is its own word for what may be printed. */
const REST = '\tForm mounted:\n\tContent types: any\n\tAlerts: none\n';

test('each printer is read with its state, its own description and what is wrong with it', () => {
  const text = [
    `printer Labels is idle.  enabled since Wed Nov 25 21:42:44 2026\n${REST}\tDescription: Label printer by the saw\n`,
    `printer Office now printing Office-2.  enabled since Wed Nov 25 21:42:57 2026\n\tThe printer is not responding.\n${REST}\tDescription: Office\n`,
    `printer Off disabled since Wed Nov 25 21:42:44 2026 -\n\tout of labels\n${REST}`,
    `printer Still disabled since Wed Nov 25 21:42:44 2026 -\n\treason unknown\n${REST}`,
  ].join('');
  expect(readPrinters(text)).toEqual([
    { name: 'Labels', state: 'idle', description: 'Label printer by the saw' },
    { name: 'Office', state: 'printing', reason: 'The printer is not responding.' },
    { name: 'Off', state: 'stopped', reason: 'out of labels' },
    { name: 'Still', state: 'stopped' },
  ]);
});

test('a printer that takes no jobs says why', () => {
  const text =
    'Labels accepting requests since Wed Nov 25\nOffice not accepting requests since Wed Nov 25 -\n\tkept for letters\n';
  expect([...readAccepting(text)]).toEqual([
    ['Labels', { accepting: true }],
    ['Office', { accepting: false, reason: 'kept for letters' }],
  ]);
});

test('a queued job is read with what its printer says of it', () => {
  const text =
    'Dead-2   root   55296   Wed Nov 25 21:42:57 2026\n\tStatus: The cable is out.\n\tAlerts: printer-stopped\n\tqueued for Dead\nDead-3   root   1024   Wed\n\tAlerts: none\n\tqueued for Dead\n';
  expect(readJobs(text)).toEqual([
    { id: 'Dead-2', status: 'The cable is out.', alerts: 'printer-stopped' },
    { id: 'Dead-3', status: '', alerts: 'none' },
  ]);
});

test('nothing is made of texts that say something else', () => {
  expect(readPrinters('lpstat: No destinations added.\n')).toEqual([]);
  expect(readJobs('')).toEqual([]);
});
