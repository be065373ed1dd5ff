import type { Page } from '@playwright/test';

/** Dotted underlines that touch a rule or a border, or come so close that they look like one line. */
export async function underlinesOn(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const CLEAR = 2;
    // What lies under a sheet touches nothing on it.
    const sheet = (box: Element) => box.closest('[role="dialog"], [role="alertdialog"]');
    const found: string[] = [];
    const top =
      [...document.querySelectorAll('[role="dialog"], [role="alertdialog"]')].at(-1) ?? document.body;
    const rules = [...top.querySelectorAll('*')].flatMap((box) => {
      if (box.closest('svg, .hidden') !== null) return [];
      const style = getComputedStyle(box);
      const { left, right, top, bottom, width, height } = box.getBoundingClientRect();
      if (width === 0 || height === 0 || style.display === 'inline') return [];
      const wide = (side: string, border: string) =>
        style.getPropertyValue(`border-${side}-style`) === 'none' ? 0 : Number.parseFloat(border);
      return [
        { at: top, wide: wide('top', style.borderTopWidth) },
        { at: bottom, wide: wide('bottom', style.borderBottomWidth) },
      ].flatMap(({ at, wide: thick }, k) =>
        thick === 0
          ? []
          : [{ box, left, right, top: k === 0 ? at : at - thick, bottom: k === 0 ? at + thick : at }],
      );
    });
    const dots = [...top.querySelectorAll('*')].flatMap((word) => {
      const after = getComputedStyle(word, '::after');
      const box = word.getBoundingClientRect();
      if (after.borderBottomStyle === 'dotted' && after.content !== 'none') {
        const low = box.bottom - Number.parseFloat(after.bottom);
        return [{ word, left: box.left, right: box.right, top: low - 3, bottom: low }];
      }
      if (!getComputedStyle(word).textDecorationStyle.includes('dotted')) return [];
      // Below the last line of its letters, as far down as these reach.
      const last = [...word.getClientRects()].at(-1);
      return last === undefined
        ? []
        : [{ word, left: last.left, right: last.right, top: last.bottom - 3, bottom: last.bottom }];
    });
    for (const line of dots)
      for (const rule of rules)
        if (
          sheet(line.word) === sheet(rule.box) &&
          line.left < rule.right &&
          rule.left < line.right &&
          line.top - CLEAR < rule.bottom &&
          rule.top < line.bottom + CLEAR
        )
          found.push(
            `underline of ${line.word.textContent.trim().slice(0, 30)} on a rule of ${rule.box.tagName.toLowerCase()}.${rule.box.className}`,
          );
    return found;
  });
}
