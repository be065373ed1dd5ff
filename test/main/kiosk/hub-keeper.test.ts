import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { DEATHS, HubKeeper, type Keeping } from '#main/kiosk/hub-keeper.ts';

/** A hub that does what the test says. */
class FakeHub {
  readonly port: string | null;
  ends = 0;
  readonly #says: ((text: string) => void)[] = [];
  readonly #ends: ((how: string) => void)[] = [];

  constructor(port: string | null) {
    this.port = port;
  }

  hear = (listen: (text: string) => void) => void this.#says.push(listen);
  ended = (listen: (how: string) => void) => void this.#ends.push(listen);
  end = () => (this.ends += 1);
  say = (text: string) => this.#says.forEach((tell) => tell(text));
  die = (how = 'SIGKILL') => this.#ends.forEach((tell) => tell(how));
}

const hubs: FakeHub[] = [];
const told: string[] = [];
let clock = 0;
const keeping: Keeping = {
  start: (port) => {
    const hub = new FakeHub(port);
    hubs.push(hub);
    return hub;
  },
  listens: (url) => void told.push(`listens ${url}`),
  neverListened: (how) => void told.push(`never listened: ${how}`),
  stopped: (how) => void told.push(`stopped: ${how}`),
  now: () => clock,
};
const last = () => hubs.at(-1) ?? new FakeHub(null);
const READY = 'LISTENING http://127.0.0.1:4711\n';

beforeEach(() => {
  hubs.length = 0;
  told.length = 0;
  clock = 0;
  vi.useFakeTimers();
});
afterEach(() => vi.useRealTimers());

test('a hub that dies is started anew at once, on the port that it had', () => {
  new HubKeeper(keeping);
  expect(last().port).toBeNull();
  last().say('LISTEN');
  last().say('ING http://127.0.0.1:4711\n');
  last().die();
  expect(hubs).toHaveLength(2);
  expect(last().port).toBe('4711');
  last().say(READY);
  expect(told).toEqual(['listens http://127.0.0.1:4711', 'listens http://127.0.0.1:4711']);
});

test('the fifth death in a minute is the last, until somebody asks for another try', () => {
  const keeper = new HubKeeper(keeping);
  for (let death = 1; death <= DEATHS; death += 1) {
    last().say(READY);
    clock += 14_000;
    last().die('code 7');
  }
  expect(hubs).toHaveLength(DEATHS);
  expect(told.at(-1)).toBe('stopped: code 7');
  keeper.again();
  expect(hubs).toHaveLength(DEATHS + 1);
  keeper.again();
  expect(hubs).toHaveLength(DEATHS + 1);
  last().say(READY);
  last().die();
  expect(hubs).toHaveLength(DEATHS + 2);
});

test('five deaths in more than a minute are each mended', () => {
  new HubKeeper(keeping);
  for (let death = 1; death <= 20; death += 1) {
    last().say(READY);
    clock += 15_001;
    last().die();
  }
  expect(hubs).toHaveLength(21);
});

test('one that dies again before it listens is tried after a pause, and counts', () => {
  new HubKeeper(keeping);
  last().say(READY);
  for (let death = 1; death < DEATHS; death += 1) {
    last().die();
    vi.advanceTimersByTime(1000);
    expect(hubs).toHaveLength(death + 1);
  }
  last().die('code 1');
  vi.advanceTimersByTime(60_000);
  expect(hubs).toHaveLength(DEATHS);
  expect(told.at(-1)).toBe('stopped: code 1');
});

test('the very first one that never listens is not tried again: what it says is for whoever starts it', () => {
  new HubKeeper(keeping);
  last().die('code 1');
  vi.advanceTimersByTime(60_000);
  expect(hubs).toHaveLength(1);
  expect(told).toEqual(['never listened: code 1']);
});

test('one that is ended stays ended, and whoever ended it is told', () => {
  const keeper = new HubKeeper(keeping);
  last().say(READY);
  let over = 0;
  expect(keeper.end(() => (over += 1))).toBe(true);
  expect(last().ends).toBe(1);
  last().die('code 0');
  expect(over).toBe(1);
  expect(hubs).toHaveLength(1);
  expect(keeper.end(() => (over += 1))).toBe(false);
});
