import { shownFullDay } from '#core/words/day.ts';
import { type Language, say } from '#core/words/say.ts';
import { inLines } from '../../network/fingerprint-lines.ts';
import { escaped, plainPage } from '../plain-page.ts';

/** What a station tells where it does not show the shop's screens. */
export type StationTells =
  /** It goes on by itself once that has changed. */
  | { readonly tells: 'away' | 'clock' | 'name' | 'stranger' }
  /** Somebody is to compare, for the first time or since the key is another one. */
  | { readonly tells: 'first' | 'changed'; readonly fingerprint: string }
  /** What answers is not what was named at the start. */
  | { readonly tells: 'given'; readonly fingerprint: string }
  /** Somebody has compared, and it differs. */
  | { readonly tells: 'warned' }
  /** The page died too often. */
  | { readonly tells: 'failing'; readonly times: number };

/** The page that says so on this day (YYYY-MM-DD), with its buttons: `trust` and `differs` answer a comparison, `again` asks for another try. */
export function stationPage(told: StationTells, address: string, language: Language, today: string): string {
  const { tells } = told;
  const words = (key: Parameters<typeof say>[0], figures: Parameters<typeof say>[1] = {}) =>
    escaped(say(key, figures, language));
  const date = shownFullDay(today, 'long', language);
  const lines =
    told.tells === 'failing'
      ? [
          `<h1>${words('kiosk.stopped.screen')}</h1>`,
          `<p>${words('kiosk.station.failing', { times: told.times })}</p>`,
        ]
      : [
          `<h1>${words(`kiosk.station.${told.tells}`)}</h1>`,
          `<p>${words(`kiosk.station.${told.tells}.do`, { address, date })}</p>`,
        ];
  if ('fingerprint' in told)
    lines.push(`<code data-fingerprint>${inLines(escaped(told.fingerprint))}</code>`);
  // Nothing has the focus: the Enter of a scanner must not answer.
  if (tells === 'first' || tells === 'changed')
    lines.push(
      `<button data-act="trust" data-starting="${words('kiosk.starting')}">${words('kiosk.station.trust')}</button>`,
      `<button data-act="differs" class="second">${words('kiosk.station.differs')}</button>`,
    );
  if (tells === 'warned') lines.push(`<button data-act="again">${words('kiosk.station.again')}</button>`);
  if (tells === 'failing')
    lines.push(
      `<button data-act="again" data-starting="${words('kiosk.starting')}" autofocus>${words('kiosk.again')}</button>`,
    );
  return plainPage(language, `<main data-station="${tells}">\n${lines.join('\n')}\n</main>`);
}
