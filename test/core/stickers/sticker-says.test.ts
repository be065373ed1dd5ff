import { expect, test } from 'vitest';
import { convertJob } from '#core/job/convert-units.ts';
import { planFile } from '#core/planning/plan-file.ts';
import type { Plan } from '#core/plan/plan.ts';
import { isOutdated, stickerSays } from '#core/stickers/sticker-says.ts';

const FILE = {
  format: 1,
  job: 'Sail loft',
  units: 'in',
  doors: [
    {
      mark: 'A',
      opening: { width: '16', height: '30' },
      arch: { rise: '1 3/4', flat: '3/4' },
      midRails: [{ width: '2 3/4', centre: '12' }],
    },
  ],
};
/** Nothing is left to the built-in defaults, which are others in millimetres. */
const EVERY_FIELD = {
  oversize: { width: '1/8', height: '1/8' },
  reveal: '1/16',
  thickness: '3/4',
  stile: { width: '2 1/4' },
  bottomRail: { width: '2 3/4' },
  topRail: { width: '2 1/4' },
  bead: '3/16',
  groove: { width: '1/4', depth: '1/4' },
  tenon: { length: '1', outerSetback: '1/4', innerSetback: '1/4', haunchClearance: '1/32' },
  mortise: { clearance: '1/16', endPlay: '1/32' },
  horn: '1/2',
  panel: { thickness: '1/2', clearance: '1/16' },
};
type Door = Readonly<Record<string, unknown>>;
const withDoor = (more: Door) => ({ ...FILE, doors: [{ ...FILE.doors[0], ...more }] });

function planned(file: unknown): Plan {
  const plan = planFile(file);
  if (!plan.ok) throw new Error(JSON.stringify(plan.faults));
  return plan.value;
}
const said = ({ doors, units }: Plan) =>
  new Map(doors.flatMap(({ parts }) => parts.map((part) => [part.part, stickerSays(part, units)])));

/** The parts whose stickers say other figures after a change. */
function changedBy(file: unknown): string[] {
  const before = said(planned(FILE));
  return [...said(planned(file))].flatMap(([part, says]) => (says === before.get(part) ? [] : [part]));
}

test('a sticker says other figures where sizes or stages on it changed, and only there', () => {
  expect(changedBy(withDoor({ horn: '3/4' }))).toEqual(['stile-left', 'stile-right']);
  expect(changedBy(withDoor({ panel: { clearance: '1/32' } }))).toEqual(['panel-1', 'panel-2']);
  expect(changedBy(withDoor({ tenon: { length: '1' } })).filter((part) => part.startsWith('panel'))).toEqual(
    [],
  );
  expect(changedBy(withDoor({ opening: { width: '16', height: '31' } }))).toEqual([
    'stile-left',
    'stile-right',
    'panel-2',
  ]);
  expect(changedBy(withDoor({ bead: '0' })).length).toBeGreaterThan(4);
});

test('a sticker says the same after another name, another day, or the same sizes in other units', () => {
  expect(changedBy({ ...FILE, job: 'Rope walk', due: '2027-05-03' })).toEqual([]);
  expect(changedBy(withDoor({ hinge: 'right', reveal: '1/8' }))).toEqual([]);
  const whole = { ...FILE, defaults: EVERY_FIELD };
  // A panel's tongue takes the fit of the tools, which is another one in millimetres.
  const frame = (file: unknown) => [...said(planned(file))].filter(([part]) => !part.startsWith('panel'));
  expect(frame(convertJob(whole, 'mm'))).toEqual(frame(whole));
});

test('a sticker whose figures were not kept, or kept in another form, is never called out of date', () => {
  const part = planned(FILE).doors[0]?.parts[0];
  if (part === undefined) throw new Error('no part');
  expect(isOutdated(undefined, part, 'in')).toBe(false);
  expect(isOutdated('0:1234567890', part, 'in')).toBe(false);
  expect(isOutdated('1:1234567890', part, 'in')).toBe(true);
  expect(isOutdated(stickerSays(part, 'in'), part, 'in')).toBe(false);
});
