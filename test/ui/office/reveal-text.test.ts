// @vitest-environment node
import fc from 'fast-check';
import { expect, test } from 'vitest';
import { readJob } from '#core/job/read-job.ts';
import { printLength } from '#core/length/print-length.ts';
import { eachSide, SIDES } from '#core/plan/each-side.ts';
import { emptyDraft, emptyRow, usualAt } from '#ui/office/draft.ts';
import { draftOf, fileOf } from '#ui/office/draft-file.ts';
import { revealText, revealTree } from '#ui/office/reveal-text.ts';

const apart = (left: string, right: string, bottom: string, top: string) => ({ left, right, bottom, top });
const none = apart('', '', '', '');

test('one length all round is said as one length, and nothing typed as nothing', () => {
  expect(revealTree({ all: ' 1/16 ', sides: none })).toBe('1/16');
  expect(revealTree({ all: '', sides: none })).toBeUndefined();
});

test('a side of its own beside one for all says all four; alone it says that side only', () => {
  const sides = { ...none, top: '1/8' };
  expect(revealTree({ all: '1/16', sides })).toEqual(apart('1/16', '1/16', '1/16', '1/8'));
  expect(revealTree({ all: '', sides })).toEqual({ top: '1/8' });
});

test('what most sides share stands for all, and those that differ beside it', () => {
  expect(revealText(apart('1/16', '1/16', '1/8', '1/16'))).toEqual({
    all: '1/16',
    sides: { ...none, bottom: '1/8' },
  });
  expect(revealText({ bottom: '1/8' }, '1/16')).toEqual({ all: '1/16', sides: { ...none, bottom: '1/8' } });
  expect(revealText({ bottom: '1/8' })).toEqual({ all: '', sides: { ...none, bottom: '1/8' } });
});

const length = fc.constantFrom('0', '1/32', '1/16', '1/8', '0.2');
const said = fc.option(
  fc.oneof(
    length,
    fc.record({ left: length, right: length, bottom: length, top: length }, { requiredKeys: [] }),
  ),
  { nil: undefined },
);

/** The reveals of the one door of a file, as core settles them. */
function settled(file: unknown): string {
  const read = readJob(file);
  if (!read.ok) throw new Error(JSON.stringify(read.faults));
  return SIDES.map((side) => {
    const reveal = read.value.doors[0]?.spec.reveal;
    return reveal === undefined ? '' : printLength(reveal[side]);
  }).join(' ');
}

test('whatever a file says of its reveals, the form that it is opened in says the same', () => {
  fc.assert(
    fc.property(said, said, (ofJob, ofDoor) => {
      const file = {
        format: 1,
        job: 'x',
        units: 'in',
        defaults: ofJob === undefined ? {} : { reveal: ofJob },
        doors: [
          {
            mark: 'A',
            opening: { width: '16', height: '30' },
            ...(ofDoor === undefined ? {} : { reveal: ofDoor }),
          },
        ],
      };
      expect(settled(fileOf(draftOf(file, null, null)))).toBe(settled(file));
    }),
  );
});

test('in gray stands what holds for an empty side: the job’s own of that side, else the job’s for all', () => {
  const draft = { ...emptyDraft('in'), rows: [emptyRow()] };
  draft.defaults['reveal.top'] = '1/8';
  expect(eachSide((side) => usualAt(draft, `reveal.${side}`))).toEqual(apart('1/16', '1/16', '1/16', '1/8'));
});
