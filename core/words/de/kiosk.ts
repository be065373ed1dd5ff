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
  'kiosk.station.away': 'Der Werkstattrechner antwortet nicht',
  'kiosk.station.away.do':
    'Ist er eingeschaltet, und ist dieser Rechner im Netz der Werkstatt? Hier ist nichts zu tun: Sobald {address} antwortet, geht es von selbst weiter.',
  'kiosk.station.first': 'Ist das Ihr Werkstattrechner?',
  'kiosk.station.first.do':
    'Unter {address} antwortet jemand. Gehen Sie zum Werkstattrechner, öffnen Sie im Büro „Netz“ und vergleichen Sie den Fingerabdruck dort mit diesem.',
  'kiosk.station.changed': 'Der Schlüssel des Werkstattrechners ist ein anderer',
  'kiosk.station.changed.do':
    'Was unter {address} antwortet, hat einen anderen Schlüssel als bisher. Vielleicht antwortet ein anderer an seiner Stelle. Hier wird nichts gezeigt und nichts erfasst, bis Sie noch einmal verglichen haben: Gehen Sie zum Werkstattrechner, öffnen Sie im Büro „Netz“ und vergleichen Sie den Fingerabdruck dort mit diesem.',
  'kiosk.station.trust': 'Jeder Buchstabe und jede Ziffer ist gleich: vertrauen',
  'kiosk.station.differs': 'Er weicht ab',
  'kiosk.station.warned': 'Halt',
  'kiosk.station.warned.do':
    'Was unter {address} antwortet, ist nicht Ihr Werkstattrechner. Ihm wird nicht vertraut, und nichts wurde ihm gesendet. Zeigen Sie diese Seite dem, der das Netz betreut.',
  'kiosk.station.again': 'Noch einmal vergleichen',
  'kiosk.station.given': 'Was antwortet, hat einen anderen Fingerabdruck',
  'kiosk.station.given.do':
    'Unter {address} antwortet etwas anderes, als beim Start des Programms hier genannt wurde. Ihm wird nicht vertraut, und nichts wurde ihm gesendet. Das ist sein Fingerabdruck; vergleichen Sie ihn mit dem im Büro, unter „Netz“.',
  'kiosk.station.clock': 'Das Datum passt nicht zum Zertifikat der Werkstatt',
  'kiosk.station.clock.do':
    'Auf diesem Rechner ist {date}, und das Zertifikat von {address} gilt an diesem Tag nicht. Stellen Sie Datum und Uhrzeit richtig, auf beiden Rechnern. Danach geht es von selbst weiter.',
  'kiosk.station.name': 'Das ist nicht die Adresse des Werkstattrechners',
  'kiosk.station.name.do':
    'Das Zertifikat dessen, was unter {address} antwortet, ist nicht auf diese Adresse ausgestellt. Starten Sie das Programm hier mit der Adresse, die das Büro unter „Netz“ zeigt.',
  'kiosk.station.stranger': 'Was antwortet, ist nicht der Werkstattrechner',
  'kiosk.station.stranger.do':
    'Unter {address} antwortet ein anderes Programm. Stimmt die Adresse? Das Büro zeigt sie unter „Netz“. Danach geht es von selbst weiter.',
  'kiosk.station.failing':
    'Es ist in einer Minute {times}-mal ausgefallen. Was hier erfasst wurde, bleibt hier, bis es gesendet ist. „Noch einmal“ antippen. Fällt es wieder aus, diesen Rechner neu starten.',
};
