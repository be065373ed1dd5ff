import type { Words } from '../language.ts';

/** How the stations stand, seen from the board, and clocks that are off. */
export const seen: Words = {
  'seen.title': 'Stationen',
  'seen.here': 'da',
  'seen.away': 'weg seit {since}',
  'seen.count.here': '{count} da',
  'seen.count.away': '{count} weg',
  'seen.count.clock': '{count} mit falscher Uhr',
  'seen.at-hub': 'am Werkstattrechner',
  'seen.no-part': 'Kein Teil auf dem Bildschirm.',
  'seen.nobody': 'niemand angemeldet',
  'seen.unsent': '{count} Meldungen noch nicht gesendet',
  'seen.unsent.one': '1 Meldung noch nicht gesendet',
  'seen.clock': 'Uhr geht {off}',
  'seen.clock.note': 'Was dort gemeldet wird, trägt eine falsche Zeit. Die Uhr dieses Geräts stellen.',
  'clock.ahead': '{span} vor',
  'clock.behind': '{span} nach',
  'clock.seconds': '{count}\u00a0s',
  'clock.minutes': '{count}\u00a0min',
  'clock.hours': '{count}\u00a0h',
  'clock.days': '{count}\u00a0Tage',
  'clock.days.one': '1\u00a0Tag',
  'clock.here':
    'Die Uhr dieses Geräts geht {off}. Bitte stellen: Was hier gemeldet wird, trägt sonst eine falsche Zeit.',
};
