import type { Words } from '../language.ts';

/** What is shown in place of the screens where the program on the shop computer, or the window, keeps failing. */
export const kiosk: Words = {
  'kiosk.stopped.hub': 'Das Programm auf dem Werkstattrechner läuft nicht mehr',
  'kiosk.stopped.screen': 'Dieser Bildschirm fällt immer wieder aus',
  'kiosk.stopped.times':
    'Es ist in einer Minute {times}-mal ausgefallen und bis auf das letzte Mal jedes Mal neu gestartet worden.',
  'kiosk.stopped.kept': 'Was erfasst wurde, liegt auf seiner Platte.',
  'kiosk.stopped.line': 'So endete es: {how}. Die letzte Zeile des Protokolls:',
  'kiosk.stopped.no-line': 'Das Protokoll ist leer oder nicht lesbar.',
  'kiosk.stopped.do':
    '„Noch einmal“ antippen. Fällt es wieder aus, den Werkstattrechner neu starten. Hilft auch das nicht, diese Seite dem zeigen, der den Rechner betreut. Das ganze Protokoll ist {log}.',
  'kiosk.again': 'Noch einmal',
  'kiosk.starting': 'Startet …',
};
