import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { en } from '#core/words/en.ts';
import { hasWords, say } from '#core/words/say.ts';

/** What stands in braces is a name of the program's own, not a word; a licence that has a name is called by it. */
const spoken = Object.entries(en).map(([key, words]) => ({
  key,
  words: words.replace(/\{\w+\}/g, '…').replaceAll('Open Government Licence', '…'),
}));
/** The README as it is read: code, addresses and names of fields keep their spelling. */
const readme = readFileSync(new URL('../../../README.md', import.meta.url), 'utf8')
  .replace(/^```[\s\S]*?^```$/gm, '')
  .replace(/`[^`]*`/g, '')
  .replace(/\]\([^)]*\)/g, ']');

function telling(wrong: RegExp): string[] {
  const lines = readme.split(/(?<=[.:|])\s+/).map((words) => ({ key: 'README', words }));
  return [...spoken, ...lines].flatMap(({ key, words }) => (wrong.test(words) ? [`${key}: ${words}`] : []));
}

describe('no words, and not the README, say', () => {
  test.each([
    ['that a blade stands, where it has stopped', /blade stands|blade standing/i],
    ['to draw back on a running blade', /draw back/i],
    ['“between cutter and fence” without what must not get there', /never between/i],
    ['“start from the pin”', /from the pin|end grain backed/i],
    ['“behind the edge” without whose edge', /behind the edge/i],
    ['that a piece is machined by hand', /machine[d]? (it )?by hand/i],
    ['“least length”', /least length/i],
    ['that a gap is closed or set by itself', /drum closed|with their gap/i],
    ['“propped”', /propped/i],
    ['“no wind” for no twist', /\bwind\b/i],
    ['“face up” for which face is up', /^face up/i],
    ['“ahead of the arbor”', /ahead of the arbor/i],
    ['“beyond the line … but for what the chisel pares”', /beyond the line|but for what/i],
    ['“left uncut”', /left uncut|stays uncut/i],
    ['outside or inside for the waste side of a line', /(inside|outside) (the line|it, in the waste)/i],
    ['“only what is sawn is a solid line”', /solid line/i],
    ['to lift a sticker where the back bears', /\bbears\b/i],
    ['to stick a sticker on, since to stick is to cut the bead', /stick on/i],
    ['1/2 for the first of two stickers', /\b[12]\/2, 2\/2|marked 1\/2|^…\/…$/],
    ['“net” for a finished line', /\bnet\b/i],
    ['“strip of bead”', /strip of bead/i],
    ['“is … off” for a difference', /… off;|\bis … off\b|\bis off;/i],
    ['foot and head for the ends of an edge', /\bits (foot|head)\b/i],
    ['“worth a thought”, over dangers', /worth a thought/i],
    ['“mind”, over cautions', /^mind$/i],
    ['to give a blank up, where it is scrapped', /\b(give|given|gives) (it )?up\b|\bspoiled\b/i],
    ['that a fraction is over something', /cannot be over/i],
    ['“more than dots”', /^more than dots/i],
    ['“a day of the calendar”', /calendar/i],
    ['that help or keys are away', /(explanations|keys) away/i],
    ['“what … is longer than”', /^what the .* (longer|wider)/i],
    ['“go on with it” or “stay with”', /go on with it|stay with/i],
    ['another opening as a remedy', /(wider|higher) opening/i],
    ['“two beside each other”', /beside each other/i],
    ['“will not go home”', /go home/i],
    ['“in each other’s place”', /each other’s place/i],
    ['“raised band” for what is lowered', /raised band/i],
    ['“as it came out”, “set anew”', /as (it|they) came out|set anew|loaded anew/i],
    ['“by other settings than now”', /other settings than/i],
    ['“how the hub is”, “knew more than it”', /how the hub|knew more|knows more/i],
    ['“put back” or “in place of everything”', /\bput back|put it back$|in place of everything/i],
    ['“leave it” for keeping it', /^leave it/i],
    ['“that is no …”', /\b(is|that is) no (part|code|badge|JSON)\b/i],
    ['to mend a code or a folder', /\bmend/i],
    ['that a part is too early, or has nothing to do', /too early at|nothing to do at/i],
    ['“how it goes”', /how it goes|^how\?$/i],
    ['“all in inches”', /^all in$/i],
    ['to take back, for undo and cancel', /\b(take|takes|taken|taking) (it |that )?back\b/i],
    ['that marks go with another and stand on it', /with it go|stands? on it/i],
    ['“as ordered”', /\bas ordered|than ordered/i],
    ['a formula in words', /squared over/i],
    ['“kept as printed”', /kept as printed/i],
    ['“slot the groove”, “the panel’s head”', /slot the groove|panel’s head/i],
    ['“who likes paper”', /who likes paper/i],
    ['“hub”', /\bhub\b/i],
    ['“bead edge”, “the bead’s edge”', /bead edge|bead’s edge/i],
    ['“face side”', /face side/i],
    ['“label” for a sticker', /\blabels?\b/i],
    ['“setup” for set-up', /\bsetups?\b/i],
    ['“upper face”', /upper face/i],
    ['that a mortise stops', /mortise stops|where the mortise stops/i],
    ['that a stage is marked', /\bmarked (done|already)\b/i],
  ])('%s', (_, wrong) => {
    expect(telling(wrong)).toEqual([]);
  });

  test.each([
    ['mitre', /mitr(e|ed|es|ing)\b/i],
    ['centre', /centre/i],
    ['plough', /plough/i],
    ['cramp', /cramp/i],
    ['metre', /metre/i],
    ['colour', /colour/i],
    ['grey', /\bgrey/i],
    ['licence', /licence/i],
    ['cancelled', /cancelled|labelled|travelled/i],
    ['inwards', /(in|out|to|for|back|up|down)wards\b/i],
    ['vice', /\bvice\b/i],
  ] as const)('“%s” in British spelling', (_, wrong) => {
    expect(telling(wrong)).toEqual([]);
  });
});

test('every stage is called by what is to be done', () => {
  const orders =
    /^(Mill|Saw|Sand|Stick|Plow|Rout|Cut|Pare|Miter|Notch|Rip|Raise|Finish|Dry-fit|Glue up|Trim)\b .*[a-z})]$/;
  const names = Object.entries(en).filter(([key]) => key.startsWith('stage.') && key !== 'stage.done');
  expect(names.length).toBeGreaterThan(20);
  expect(names.filter(([, words]) => !orders.test(words))).toEqual([]);
});

test('each station has a name that stands in a sentence', () => {
  for (const key of Object.keys(en).filter((each) => each.startsWith('station.')))
    expect(hasWords(key.replace('station.', 'at.')), key).toBe(true);
});

test('no line ends between a number and its unit, or inside a number, in any words', () => {
  const broken =
    /[\d…] (mm|kB|MB|GB|ft|°)(?!\w)|\d in\b(?! (all|the|width|a|it|this|that))|… (in|s)$|\d \d+\/\d|≈ | %/;
  expect(spoken.flatMap(({ key, words }) => (broken.test(words) ? [`${key}: ${words}`] : []))).toEqual([]);
  expect(say('told.length', { example: '14 3/4 or ≈ 1/16' })).toBe(
    'Not a length: type it as 14\u00a03/4 or ≈\u00a01/16.',
  );
});
