import { fork } from 'node:child_process';
import { builtEntry } from './built-entry.ts';

export interface OrderedProcess<Order, Report> {
  readonly pid: number;
  order(order: Order): Promise<Report>;
  end(): void;
}

/** A file of this folder in a process of its own, so that what it takes is not measured. It is given one order at a time. */
export async function orderedProcess<Order, Report>(name: string): Promise<OrderedProcess<Order, Report>> {
  const child = fork(await builtEntry(name), { serialization: 'advanced' });
  return {
    pid: child.pid ?? 0,
    order: (order: Order) =>
      new Promise<Report>((told, failed) => {
        const gone = () => failed(new Error(`the process of ${name} is gone`));
        child.once('exit', gone);
        child.once('message', (report: Report) => {
          child.off('exit', gone);
          told(report);
        });
        child.send(order as object);
      }),
    end: () => child.disconnect(),
  };
}
