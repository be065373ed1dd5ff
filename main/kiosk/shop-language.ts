import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { z } from 'zod';
import { isLanguage, type Language } from '#core/words/languages.ts';

const withLanguage = z.object({ shop: z.object({ language: z.string() }) });

/** The language that the shop has chosen, read where no hub is there to ask; English where it cannot be read. */
export function shopLanguage(data: string): Language {
  try {
    const read = withLanguage.safeParse(JSON.parse(readFileSync(join(data, 'shop.json'), 'utf8')));
    return read.success && isLanguage(read.data.shop.language) ? read.data.shop.language : 'en';
  } catch {
    return 'en';
  }
}
