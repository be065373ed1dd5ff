import { type Language, tableOf } from '#core/words/languages.ts';

const STYLE = `
body { margin: 0; padding: 5vmin 7vmin; font: 20px/1.4 'Atkinson Hyperlegible', sans-serif; color: #111; background: #fff; }
h1 { font-size: 2em; line-height: 1.2; margin: 0 0 0.6em; }
p { margin: 0 0 1em; max-width: 60em; }
code { display: block; font: 700 1.2em/1.4 monospace; margin: 0 0 1em; padding: 0.4em 1em; background: #f3f1ea; border-left: 6px solid #111; }
.line { padding: 0.8em 1em; background: #f3f1ea; border-left: 6px solid #99201b; overflow-wrap: anywhere; }
button { font: inherit; font-weight: 700; min-height: 72px; padding: 0 2em; margin: 0 1em 1em 0; color: #fff; background: #111; border: 2px solid #111; border-radius: 6px; }
button.second { color: #111; background: #fff; }
button:disabled { color: #fff; background: #4a4a4a; }
`;

/** Holds every key but those that reach the buttons, tells which of them was tapped, and says where that is under way. */
const SCRIPT = `
for (const name of ['contextmenu', 'dragover', 'drop', 'auxclick'])
  addEventListener(name, (event) => event.preventDefault());
addEventListener('wheel', (event) => event.ctrlKey && event.preventDefault(), { passive: false });
addEventListener('keydown', (event) => {
  const plain = !event.ctrlKey && !event.altKey && !event.metaKey && !event.shiftKey;
  if (!plain || !['Tab', 'Enter', ' '].includes(event.key)) event.preventDefault();
}, { capture: true });
const buttons = [...document.querySelectorAll('button')];
for (const button of buttons)
  button.addEventListener('click', () => {
    for (const each of buttons) each.disabled = true;
    button.textContent = button.dataset.starting ?? button.textContent;
    fetch('/' + button.dataset.act, { method: 'POST' }).catch(() => undefined);
  });
`;

/** A page of ours that stands for itself, with no hub to serve it: `body` is markup, in which `escaped` texts stand. */
export function plainPage(language: Language, body: string): string {
  return `<!doctype html>
<html lang="${tableOf(language).locale}">
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<link rel="icon" href="data:,">
<title>Shoulderline</title>
<style>${STYLE}</style>
${body}
<script>${SCRIPT}</script>
</html>
`;
}

const ENTITIES: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };

/** A text as markup shows it. */
export function escaped(text: string): string {
  return text.replace(/[&<>"]/g, (sign) => ENTITIES[sign] ?? sign);
}
