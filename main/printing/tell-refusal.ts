import { speakSaying } from '#core/telling/speak-saying.ts';
import { hasWords, type Language, say } from '#core/words/say.ts';
import { type Refused, wordsOf } from './printer.ts';

/** A refusal in words a person can act on; what a printer says of itself is put into words where it is a known reason. */
export function tellRefusal({ code, figures }: Refused, language: Language): string {
  const { reason } = figures;
  const told =
    code.startsWith('printer') && typeof reason === 'string'
      ? { ...figures, reason: reasonInWords(reason, language) }
      : figures;
  return speakSaying({ words: wordsOf(code), figures: told }, language);
}

/** Reasons may come several at once, each with how bad it is: "media-empty-error,cover-open-report" (RFC 8011, 5.4.12). */
const SEVERITY = /-(?:error|warning|report)$/;

/** What CUPS itself says where nobody gave a reason; jobs' reasons tell only that the printer stopped. */
const NO_REASON =
  /^(?:–|none|paused|unknown|reason unknown|rejecting jobs|(?:printer|job)-stopped|job-hold\S*)?$/i;

/** A printer's reason in words: IPP's keywords by their meaning, all else as what the printer says. */
export function reasonInWords(reason: string, language: Language): string {
  const words = new Set<string>();
  for (const piece of reason.split(/[,\s]+/)) {
    const key: string = `print.reason-${piece.replace(SEVERITY, '').toLowerCase()}`;
    if (hasWords(key)) words.add(say(key, {}, language));
    else if (!NO_REASON.test(piece)) {
      // Not keywords but a sentence, or a keyword of the maker's own.
      return NO_REASON.test(reason.trim())
        ? say('print.no-reason', {}, language)
        : say('print.printer-says', { words: reason.trim() }, language);
    }
  }
  return words.size === 0 ? say('print.no-reason', {}, language) : [...words].join(', ');
}
