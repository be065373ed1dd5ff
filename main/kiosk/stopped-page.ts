import { join } from 'node:path';
import { say } from '#core/words/say.ts';
import { lastLine } from './last-line.ts';
import { escaped, plainPage } from './plain-page.ts';
import { shopLanguage } from './shop-language.ts';

/** What is told where no screen can be shown: that the hub keeps dying, or that the screen itself does. */
export interface Stopped {
  readonly what: 'hub' | 'screen';
  readonly times: number;
  /** How it ended the last time: "code 1", "SIGKILL". */
  readonly how: string;
  /** The data folder, where the log lies. */
  readonly data: string;
}

/** A plain page: what happened, the log's last line, and what to do. */
export function stoppedPage(stopped: Stopped): string {
  const { what, times, how, data } = stopped;
  const language = shopLanguage(data);
  const log = join(data, 'hub.log');
  const line = lastLine(log);
  const words = (key: Parameters<typeof say>[0], figures: Readonly<Record<string, string | number>> = {}) =>
    escaped(say(key, figures, language));
  return plainPage(
    language,
    `<main data-stopped="${what}">
<h1>${words(`kiosk.stopped.${what}`)}</h1>
<p>${words('kiosk.stopped.times', { times })} ${words('kiosk.stopped.kept')}</p>
<p>${words('kiosk.stopped.line', { how })}</p>
<p class="line">${line === null ? words('kiosk.stopped.no-line') : escaped(line)}</p>
<p>${words('kiosk.stopped.do', { log })}</p>
<button data-act="again" data-starting="${words('kiosk.starting')}" autofocus>${words('kiosk.again')}</button>
</main>`,
  );
}
