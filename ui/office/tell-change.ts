import type { Change } from '#core/job/what-changed.ts';
import { partName } from '#core/telling/names.ts';
import { shownDay } from '#core/words/day.ts';
import { say } from '#core/words/say.ts';
import { labelOf } from './tell-fault.ts';

/** What a save changed at one field, in a line: the field by its label, from what it was to what it is. */
export function tellChange({ mark, field, was, now }: Change): string {
  if (field === 'profile') return say('revisions.tools');
  if (field === 'door')
    return say(was === undefined ? 'revisions.doors-added' : 'revisions.doors-taken', {
      what: mark ?? '',
    });
  const label = field.startsWith('measured.') ? measuredLabel(field) : fieldLabel(field);
  const what = mark === undefined ? label : say('revisions.of', { mark, label });
  const none = say('revisions.empty');
  const told = (text: string | undefined) =>
    text === undefined ? none : field === 'due' ? shownDay(text) : text;
  return say('revisions.change', { what, was: told(was), now: told(now) });
}

/** Of a field that has no label of its own the path says where it is. */
function fieldLabel(field: string): string {
  const bare = field.replace(/^(opening|arch)\./, '');
  const rail = /^midRails\[(\d+)\]\.(\w+)$/.exec(bare);
  if (rail === null) return labelOf(bare) || field;
  const label = say(rail[2] === 'width' ? 'form.label.midRails.width' : 'form.label.midRails.centre');
  return `${label} (${Number(rail[1]) + 1})`;
}

/** "measured.doors.BENCH-1.parts.panel.width": the door, its part, and the size. */
function measuredLabel(field: string): string {
  const door = /^measured\.doors\.([^.]+)\.(.+)$/.exec(field);
  const inside = door?.[2] ?? field.replace('measured.', '');
  const part = /^parts\.([^.]+)\.(.+)$/.exec(inside);
  const size = (part?.[2] ?? inside).replace(/\[\d+\]\.\w+$/, '').replace(/^opening\./, '');
  const own = part !== null && (size === 'length' || size === 'width');
  const named = own
    ? say(`office.measured.${size}`)
    : labelOf(size === 'grooveWidth' ? 'groove.width' : size);
  const whose = [door?.[1], part === null ? undefined : partName(part[1] ?? '')];
  const label = [...whose, named === '' ? size : named].filter((each) => each !== undefined).join(' · ');
  return say('revisions.measured', { label });
}
