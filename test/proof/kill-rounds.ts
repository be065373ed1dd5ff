import { randomUUID } from 'node:crypto';
import type { Mark } from '#core/marks/mark.ts';
import { type HubProcess, startHubProcess } from '../e2e/hub-process.ts';

export interface KillRound {
  /** Marks answered in this round, and marks sent but never answered. */
  readonly answered: number;
  readonly open: number;
}

export interface Blank {
  readonly code: string;
  readonly stages: readonly { readonly stage: string; readonly station: string }[];
}

interface Told {
  readonly seq: number;
  readonly mark: Pick<Mark, 'id' | 'code' | 'stage' | 'mark'>;
}

const CLIENTS = 8;

/**
 * Marks from eight clients while the hub is killed at a random moment, round after round on one data folder; after each
 * round every answered mark must be told again by the hub, exactly once and in one order. Throws when one is not.
 */
export async function killRounds(data: string, rounds: number, random: () => number): Promise<KillRound[]> {
  const answered = new Set<string>();
  const sent = new Set<string>();
  const results: KillRound[] = [];
  let hub = await startHubProcess(data);
  try {
    let clients = dealt(await jobOf(hub));
    for (let round = 0; round < rounds; round += 1) {
      const before = { answered: answered.size, sent: sent.size };
      const dying = { now: false };
      const working = clients.map((client) => workAt(hub, client, dying, answered, sent));
      const enough = before.answered + 1 + Math.floor(random() * 60);
      for (let waited = 0; answered.size < enough && waited < 10_000; waited += 2) await pause(2);
      await pause(random() * 10);
      dying.now = true;
      await hub.end('SIGKILL');
      await Promise.all(working);
      hub = await startHubProcess(data);
      const told = await everyMark(hub);
      check(told, answered, sent, round);
      results.push({
        answered: answered.size - before.answered,
        open: sent.size - before.sent - (answered.size - before.answered),
      });
      // What was sent and not answered may be there or not; the clients look again, as stations do.
      clients = dealt(await jobOf(hub));
    }
  } finally {
    await hub.end('SIGTERM');
  }
  return results;
}

export function check(
  told: readonly Told[],
  answered: ReadonlySet<string>,
  sent: ReadonlySet<string>,
  round: number,
): void {
  const ids = told.map(({ mark }) => mark.id);
  const once = new Set(ids);
  if (once.size !== ids.length) throw new Error(`round ${round}: a mark is there twice`);
  for (const id of answered)
    if (!once.has(id)) throw new Error(`round ${round}: an answered mark is lost: ${id}`);
  for (const id of once) if (!sent.has(id)) throw new Error(`round ${round}: a mark that nobody sent: ${id}`);
  if (told.some(({ seq }, k) => k > 0 && seq <= (told[k - 1]?.seq ?? 0)))
    throw new Error(`round ${round}: numbers out of order`);
}

/** Marks one blank after another, stage by stage and back again, so that work never runs out. */
async function workAt(
  hub: HubProcess,
  blanks: readonly Blank[],
  dying: { readonly now: boolean },
  answered: Set<string>,
  sent: Set<string>,
): Promise<void> {
  for (let k = 0; !dying.now; k = (k + 1) % blanks.length) {
    const { code, stages } = blanks[k] ?? { code: '', stages: [] };
    const [first] = stages;
    for (const mark of ['done', 'undo'] as const) {
      const id = randomUUID();
      sent.add(id);
      const body = {
        id,
        code,
        station: first?.station,
        stage: first?.stage,
        mark,
        at: new Date().toISOString(),
      };
      try {
        const response = await fetch(`${hub.url}/api/marks`, {
          method: 'POST',
          headers: { 'content-type': 'application/json' },
          body: JSON.stringify(body),
        });
        if (response.status === 200) answered.add(id);
        await response.arrayBuffer();
      } catch {
        return;
      }
    }
  }
}

/** The blanks of the proof's job; the job is put in where it is not there yet. */
export async function jobOf(hub: Pick<HubProcess, 'url'>): Promise<Blank[]> {
  const file = {
    format: 1,
    id: 'kill-rounds',
    job: 'Kill rounds',
    units: 'in',
    doors: [{ mark: 'A', quantity: 8, opening: { width: '16', height: '30' } }],
  };
  if ((await fetch(`${hub.url}/api/jobs/kill-rounds`)).status === 404)
    await fetch(`${hub.url}/api/jobs`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify(file),
    });
  const plan = (await (await fetch(`${hub.url}/api/jobs/kill-rounds`)).json()) as {
    doors: { parts: Blank[] }[];
  };
  return plan.doors.flatMap(({ parts }) => parts);
}

/** Each client gets the blanks of its own door. */
function dealt(blanks: readonly Blank[]): Blank[][] {
  const each = blanks.length / CLIENTS;
  return Array.from({ length: CLIENTS }, (_, k) => blanks.slice(k * each, (k + 1) * each));
}

/** Every mark that the hub tells from the first one on, up to the beat that says that there are no more. */
export async function everyMark(hub: Pick<HubProcess, 'url'>): Promise<Told[]> {
  const { seq } = (await (await fetch(`${hub.url}/api/health`)).json()) as { seq: number };
  const response = await fetch(`${hub.url}/api/events`, { headers: { 'last-event-id': '0' } });
  const told: Told[] = [];
  let rest = '';
  for await (const chunk of response.body?.pipeThrough(new TextDecoderStream()) ?? []) {
    const events = `${rest}${chunk}`.split('\n\n');
    rest = events.pop() ?? '';
    for (const event of events) {
      const data = /^event: mark\ndata: (.*)$/m.exec(event)?.[1];
      if (data !== undefined) told.push(JSON.parse(data) as Told);
    }
    if ((told.at(-1)?.seq ?? 0) >= seq) break;
    // The greeting has a beat of its own; any later one comes behind all that was missed.
    if (events.some((event) => event.startsWith('event: beat'))) break;
  }
  return told;
}

function pause(ms: number): Promise<void> {
  return new Promise((over) => setTimeout(over, ms));
}
