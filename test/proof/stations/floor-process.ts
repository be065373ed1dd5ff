import { fork } from 'node:child_process';
import { builtEntry } from '../built-entry.ts';
import type { Order, Report } from './floor.ts';

/** The stations of a shop in a process of their own, so that what they take is not measured. One order at a time. */
export async function floorProcess() {
  const child = fork(await builtEntry('stations/floor'), { serialization: 'advanced' });
  return {
    order: (order: Order) =>
      new Promise<Report>((told, failed) => {
        const gone = () => failed(new Error('the process of the stations is gone'));
        child.once('exit', gone);
        child.once('message', (report: Report) => {
          child.off('exit', gone);
          told(report);
        });
        child.send(order);
      }),
    end: () => child.disconnect(),
  };
}
