import { monitorEventLoopDelay } from 'node:perf_hooks';
import { setTimeout as pause } from 'node:timers/promises';
import { type Answered, Station, type StationTold } from './station.ts';

/** What this process is told to do. */
export type Order =
  | { readonly kind: 'open'; readonly floor: string; readonly stations: readonly StationTold[] }
  | { readonly kind: 'pace'; readonly floor: string; readonly perSecond: number; readonly seconds: number }
  | { readonly kind: 'tell'; readonly floor: string };

/** What it answers. */
export interface Report {
  readonly answered: readonly Answered[];
  readonly stations: readonly {
    readonly heard: readonly number[];
    readonly beats: readonly number[];
    readonly loaded: number;
    readonly faults: readonly string[];
    readonly streams: number;
  }[];
  /** How long this process itself stood still since it was asked last: 99th percentile and most, in ms. */
  readonly still: { readonly p99: number; readonly most: number };
}

const floors = new Map<string, Station[]>();
const delay = monitorEventLoopDelay({ resolution: 1 });
delay.enable();

/** Marks from all stations in turn, evenly; it does not wait for one answer before the next is sent. */
async function pace(stations: readonly Station[], perSecond: number, seconds: number): Promise<Answered[]> {
  const began = performance.now();
  const marks: Promise<Answered>[] = [];
  for (let k = 0; k < perSecond * seconds; k += 1) {
    await pause(Math.max(0, began + (k * 1000) / perSecond - performance.now()));
    const station = stations[k % stations.length];
    if (station !== undefined) marks.push(station.mark());
  }
  return Promise.all(marks);
}

process.on('message', (order: Order) => {
  void (async () => {
    let answered: readonly Answered[] = [];
    if (order.kind === 'open') {
      const stations = order.stations.map((each) => new Station(each));
      floors.set(order.floor, stations);
      for (const station of stations) void station.listen();
      while (stations.some(({ beats, loaded }) => beats.length === 0 || loaded === 0)) await pause(20);
    }
    const stations = floors.get(order.floor) ?? [];
    if (order.kind === 'pace') answered = await pace(stations, order.perSecond, order.seconds);
    // The monitor counts how long a turn took; what it waits by itself is a millisecond.
    const still = { p99: delay.percentile(99) / 1e6 - 1, most: delay.max / 1e6 - 1 };
    delay.reset();
    process.send?.({
      answered,
      stations:
        order.kind === 'pace'
          ? []
          : stations.map(({ heard, beats, loaded, faults, streams }) => ({
              heard,
              beats,
              loaded,
              faults,
              streams,
            })),
      still,
    } satisfies Report);
  })();
});
process.on('disconnect', () => process.exit(0));
