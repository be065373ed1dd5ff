import type { Page } from '@playwright/test';

/**
 * The fields of the uppermost sheet, or of the page, whose words a person would not see whole. For a choice every word that it
 * may show is held, not only the one that it shows now: the browser is asked how wide it would be made for that word alone, in
 * its own type and with its own arrow, for not every browser tells of a choice that what it shows is wider than it is.
 */
export async function cutInFields(page: Page): Promise<string[]> {
  return page.evaluate(() => {
    const SLACK = 0.5;
    const found = new Set<string>();
    const sheets = [...document.querySelectorAll('[role="dialog"], [role="alertdialog"]')];
    const top = sheets.at(-1) ?? document.body;
    /** What of an element tells how wide its words are. */
    const AS_SHOWN = ['font', 'letter-spacing', 'word-spacing', 'text-transform', 'padding', 'border'];

    for (const field of top.querySelectorAll('select')) {
      const { width } = field.getBoundingClientRect();
      if (width === 0) continue;
      const style = getComputedStyle(field);
      const probe = document.createElement('select');
      for (const name of AS_SHOWN) probe.style.setProperty(name, style.getPropertyValue(name));
      probe.style.setProperty('appearance', style.appearance);
      probe.style.cssText += ';position:absolute;visibility:hidden;width:auto;min-width:0;max-width:none';
      const option = document.createElement('option');
      probe.append(option);
      document.body.append(probe);
      for (const { label } of field.options) {
        option.textContent = label;
        const needed = probe.getBoundingClientRect().width;
        if (needed > width + SLACK)
          found.add(
            `cut in field ${field.name}: ${label} needs ${Math.ceil(needed)} of ${Math.floor(width)}`,
          );
      }
      probe.remove();
    }
    for (const field of top.querySelectorAll('input'))
      // A file's own choice lies over a button of ours, unseen: its words are the browser's and nobody reads them.
      if (getComputedStyle(field).opacity !== '0' && field.scrollWidth > field.clientWidth + 1)
        found.add(`cut in field ${field.name}: ${field.value}`);
    return [...found];
  });
}
