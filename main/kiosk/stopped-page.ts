import { join } from 'node:path';
import { type Language, say } from '#core/words/say.ts';
import { tableOf } from '#core/words/languages.ts';
import { lastLine } from './last-line.ts';
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

const STYLE = `
body { margin: 0; padding: 5vmin 7vmin; font: 20px/1.4 'Atkinson Hyperlegible', sans-serif; color: #111; background: #fff; }
h1 { font-size: 2em; line-height: 1.2; margin: 0 0 0.6em; }
p { margin: 0 0 1em; max-width: 60em; }
.line { padding: 0.8em 1em; background: #f3f1ea; border-left: 6px solid #99201b; overflow-wrap: anywhere; }
button { font: inherit; font-weight: 700; min-height: 72px; padding: 0 2em; color: #fff; background: #111; border: 0; border-radius: 6px; }
button:disabled { background: #4a4a4a; }
`;

/** Holds every key but those that reach the button, asks for another try, and says where that is under way. */
const SCRIPT = `
for (const name of ['contextmenu', 'dragover', 'drop', 'auxclick'])
  addEventListener(name, (event) => event.preventDefault());
addEventListener('wheel', (event) => event.ctrlKey && event.preventDefault(), { passive: false });
addEventListener('keydown', (event) => {
  const plain = !event.ctrlKey && !event.altKey && !event.metaKey && !event.shiftKey;
  if (!plain || !['Tab', 'Enter', ' '].includes(event.key)) event.preventDefault();
}, { capture: true });
const button = document.querySelector('button');
button.addEventListener('click', () => {
  button.disabled = true;
  button.textContent = button.dataset.starting;
  fetch('/again', { method: 'POST' }).catch(() => undefined);
});
`;

/** A plain page: what happened, the log's last line, and what to do. */
export function stoppedPage(stopped: Stopped): string {
  const { what, times, how, data } = stopped;
  const language = shopLanguage(data);
  const log = join(data, 'hub.log');
  const line = lastLine(log);
  const words = (key: Parameters<typeof say>[0], figures: Readonly<Record<string, string | number>> = {}) =>
    escaped(say(key, figures, language));
  return `<!doctype html>
<html lang="${htmlLanguage(language)}">
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<link rel="icon" href="data:,">
<title>Shoulderline</title>
<style>${STYLE}</style>
<main data-stopped="${what}">
<h1>${words(`kiosk.stopped.${what}`)}</h1>
<p>${words('kiosk.stopped.times', { times })} ${words('kiosk.stopped.kept')}</p>
<p>${words('kiosk.stopped.line', { how })}</p>
<p class="line">${line === null ? words('kiosk.stopped.no-line') : escaped(line)}</p>
<p>${words('kiosk.stopped.do', { log })}</p>
<button data-starting="${words('kiosk.starting')}" autofocus>${words('kiosk.again')}</button>
</main>
<script>${SCRIPT}</script>
</html>
`;
}

function htmlLanguage(language: Language): string {
  return tableOf(language).locale;
}

const ENTITIES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };

function escaped(text: string): string {
  return text.replace(/[&<>"]/g, (sign) => ENTITIES[sign] ?? sign);
}
