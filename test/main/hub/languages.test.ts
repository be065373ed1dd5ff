import { expect, onTestFinished, test } from 'vitest';
import { shopAnswer } from '#core/api/shop-api.ts';
import { say, speak } from '#core/words/say.ts';
import { readPages } from '../../labels/papers/read-pages.ts';
import { liveHub } from './live-hub.ts';

const JOB = {
  format: 1,
  id: 'low',
  job: 'Low',
  units: 'in',
  doors: [{ mark: 'A', opening: { width: '16', height: '12' }, horn: '0' }],
};
const FAULTY = { ...JOB, id: 'faulty', doors: [{ mark: 'A', opening: { width: '4', height: '30' } }] };

/** A hub whose shop has chosen a language. */
async function hubOf(language: string) {
  const { ask } = await liveHub();
  onTestFinished(() => speak('en'));
  const { revision, ...shop } = shopAnswer.parse((await ask('GET', '/shop')).body);
  const saved = await ask('PUT', '/shop', { revision, shop: { ...shop, language } });
  expect(saved.status).toBe(200);
  await ask('POST', '/jobs', JOB);
  return ask;
}

/** What a hub says of a refused request, of a job with faults, and of a door that much is to be said of. */
async function saidBy(ask: Awaited<ReturnType<typeof hubOf>>, headers: Record<string, string>) {
  const answers = [
    await ask('GET', '/jobs/none', undefined, headers),
    await ask('GET', '/parts/12', undefined, headers),
    await ask('POST', '/jobs', FAULTY, headers),
    await ask('GET', '/jobs/low?why=1', undefined, headers),
    await ask('GET', '/stocks', undefined, headers),
  ];
  return answers.map(({ body }) => JSON.stringify(body)).join('\n');
}

test('an answer is English unless another language is asked for, whatever the shop speaks', async () => {
  const english = await saidBy(await hubOf('en'), {});
  const ask = await hubOf('pseudo');
  expect(await saidBy(ask, {})).toBe(english);
  expect(await saidBy(ask, { 'accept-language': 'xx, fr;q=0.9, *' })).toBe(english);
});

test('an answer is in the language that weighs most of those that there are, by its first part too', async () => {
  const ask = await hubOf('en');
  const told = async (accept: string) =>
    (await ask('GET', '/jobs/none', undefined, { 'accept-language': accept })).body.message;
  const stretched = say('api.job-unknown', { id: 'none' }, 'pseudo');
  expect(await told('pseudo')).toBe(stretched);
  expect(await told('en;q=0.4, xx, PSEUDO-XY;q=0.5')).toBe(stretched);
  expect(await told('en, pseudo;q=0.9')).toBe(say('api.job-unknown', { id: 'none' }, 'en'));
  expect(await told('pseudo;q=0, en;q=0.1')).toBe(say('api.job-unknown', { id: 'none' }, 'en'));
  expect(await saidBy(ask, { 'accept-language': 'pseudo' })).not.toMatch(/ the | of | is /);
});

test('stickers are in the shop’s language, whoever asks for them', async () => {
  const textOf = async (language: string) => {
    const { hub, ask } = await liveHub();
    onTestFinished(() => speak('en'));
    const { revision, ...shop } = shopAnswer.parse((await ask('GET', '/shop')).body);
    await ask('PUT', '/shop', { revision, shop: { ...shop, language } });
    await ask('POST', '/jobs', JOB);
    const pdf = await (await fetch(`${hub.url}/api/jobs/low/stickers.pdf`)).arrayBuffer();
    const pages = await readPages(new Uint8Array(pdf));
    return pages.flatMap(({ texts }) => texts.map(({ text }) => text)).join(' ');
  };
  expect(await textOf('en')).toContain('Left stile');
  const german = await textOf('de');
  expect(german).toContain('Längsfries links');
  expect(german).not.toMatch(/stile|mortise|tenon|place on back/);
});

test('a shop keeps the language that it chose, and a language that there is not is refused', async () => {
  const ask = await hubOf('pseudo');
  const { revision, ...shop } = shopAnswer.parse((await ask('GET', '/shop')).body);
  expect(shop.language).toBe('pseudo');
  const refused = await ask('PUT', '/shop', { revision, shop: { ...shop, language: 'xx' } });
  expect(refused.status).toBe(400);
});
