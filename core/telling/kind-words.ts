import type { NoteLine } from '../plan/note-lines.ts';
import { hasWords, type Language, say } from '../words/say.ts';

/** What is said of a kind of note: its one sentence, or what its several have in common. */
export function kindWords({ id, tellings }: Pick<NoteLine, 'id' | 'tellings'>, language?: Language): string {
  const kind = `note-kind.${id}`;
  return tellings.length > 1 && hasWords(kind) ? say(kind, {}, language) : (tellings[0]?.message ?? '');
}
