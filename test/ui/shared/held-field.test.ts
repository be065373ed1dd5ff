import { afterEach, expect, test } from 'vitest';
import { tapHeldFields } from '#ui/shared/held-field.ts';

afterEach(() => document.body.replaceChildren());

/** What a touch screen says to a page with a field, a box to tick and a button. */
function screen() {
  const taps: string[] = [];
  const [field, box, button] = [element('input'), element('input'), element('button')];
  box.setAttribute('type', 'checkbox');
  document.body.append(field, box, button);
  document.body.addEventListener('click', ({ target }) =>
    taps.push(target === field ? 'field' : target === box ? 'box' : 'button'),
  );
  const end = tapHeldFields(window);
  const touch = (name: string, fingers: number) => {
    const event = Object.assign(new Event(name, { bubbles: true }), {
      touches: Array.from({ length: fingers }),
    });
    field.dispatchEvent(event);
  };
  const menu = (target: Element, pointerType: string) =>
    target.dispatchEvent(Object.assign(new MouseEvent('contextmenu', { bubbles: true }), { pointerType }));
  return { field, box, button, taps, touch, menu, end };
}
const element = (name: string) => document.createElement(name);

test('a long press on a field taps it once, when the last finger is off the glass', () => {
  const { field, taps, touch, menu, end } = screen();
  touch('touchstart', 1);
  menu(field, 'touch');
  touch('touchstart', 2);
  touch('touchend', 1);
  expect(taps).toEqual([]);
  touch('touchend', 0);
  touch('touchstart', 1);
  touch('touchend', 0);
  expect(taps).toEqual(['field']);
  end();
});

test('where the menu is asked for when the finger is off already, the field is tapped at once', () => {
  const { field, taps, touch, menu, end } = screen();
  touch('touchstart', 1);
  touch('touchend', 0);
  menu(field, 'touch');
  expect(taps).toEqual(['field']);
  end();
  menu(field, 'touch');
  expect(taps).toEqual(['field']);
});

test('a mouse’s other button taps nothing, and a finger held down on what is no field does not either', () => {
  const { field, box, button, taps, touch, menu, end } = screen();
  menu(field, 'mouse');
  touch('touchstart', 1);
  menu(box, 'touch');
  menu(button, 'touch');
  touch('touchend', 0);
  expect(taps).toEqual([]);
  end();
});
