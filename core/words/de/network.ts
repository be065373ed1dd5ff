import type { Words } from '../language.ts';

/** The shop's network: the office's page of it, pairing a device, and trusting the shop's certificate. */
export const network: Words = {
  'network.title': 'Netz',
  'network.note':
    'Ist das Netz an, zeigt ein Tablet oder Rechner an jeder Maschine ihre Station. Nur Geräte, die Sie hier koppeln, können etwas lesen oder erfassen.',
  'network.on': 'Netz einschalten',
  'network.off': 'Netz ausschalten',
  'network.state.off': 'Das Netz ist aus. Nur dieser Rechner zeigt die Werkstatt.',
  'network.state.on': 'Das Netz ist an.',
  'network.state.no-pin':
    'Das Netz ist aus: Es braucht eine PIN. Legen Sie unter „PIN und Sicherungen“ eine fest.',
  'network.state.no-address':
    'Das Netz ist aus: Dieser Rechner hat keine Adresse in einem privaten Netz. Verbinden Sie ihn mit dem Netz der Werkstatt.',
  'network.state.failed':
    'Das Netz ließ sich nicht einschalten: {reason}. Es wird jede Minute noch einmal versucht.',
  'network.told': 'Ob es an ist, wurde beim Start des Programms gesagt und lässt sich hier nicht ändern.',
  'network.pin-first': 'Das Netz braucht eine PIN: Legen Sie zuerst unter „PIN und Sicherungen“ eine fest.',
  'network.addresses': 'Adressen',
  'network.named':
    'Der Name bleibt, wenn sich die Adresse ändert. Koppeln Sie Geräte über ihn, wo er sich öffnet.',
  'network.moved':
    'Ein Gerät, das unter einer früheren Adresse gekoppelt wurde, sendet, was es aufgehoben hat, und kommt hierher, sobald es die neue erfährt: Geben Sie sie dort ein, oder scannen Sie ihr Bild.',
  'network.moved.show': 'Bilder der Adressen zeigen',
  'network.moved.hide': 'Bilder verbergen',
  'network.fingerprint': 'Fingerabdruck des Zertifikats der Werkstatt',
  'network.fingerprint.note':
    'Jedes Gerät muss dieselben Buchstaben und Ziffern zeigen, bevor es dem Zertifikat vertrauen darf. Weichen sie ab, dann halt: Es steht etwas dazwischen.',
  'network.add': 'Ein Gerät hinzufügen',
  'network.add.note':
    'Dafür werden zwei Bilder und ein Code gezeigt. Über das erste Bild öffnet das Gerät die Vertrauensseite: Folgen Sie ihren Schritten. Über das zweite wird es gekoppelt; oder die Adresse darunter öffnen und den Code eintippen.',
  'network.offer': 'Bilder und Code für ein Gerät zeigen',
  'network.offer.until': 'Gilt für ein Gerät, bis {time}.',
  'network.offer.over': 'Die zehn Minuten sind um: Bilder und Code gelten nicht mehr. Neue zeigen lassen.',
  'network.offer.taken':
    'Ein Gerät wurde über diese Bilder gekoppelt; es steht bei den Geräten. Ein weiteres braucht neue Bilder.',
  'network.offer.trust': '1. Der Werkstatt vertrauen',
  'network.offer.pair': '2. Das Gerät koppeln',
  'network.offer.by-address':
    'Öffnet sich der Name auf dem Gerät nicht, wie auf vielen älteren Android-Geräten, koppeln Sie es über eine Adresse:',
  'network.offer.code': 'Code zum Eintippen',
  'network.offer.no-trust':
    'Die Vertrauensseite ließ sich nicht öffnen: Ein anderes Programm belegt ihren Port. Geräte, die der Werkstatt schon vertrauen, können gekoppelt werden.',
  'network.symbol': 'Bild zum Scannen: {address}',
  'network.devices': 'Geräte',
  'network.devices.none': 'Noch ist kein Gerät gekoppelt.',
  'network.device': 'Gerät',
  'network.device.station': 'Station',
  'network.device.seen': 'Zuletzt gesehen',
  'network.device.online': 'jetzt',
  'network.device.clock': 'Uhr',
  'network.device.clock.right': 'richtig',
  'network.device.clock.unknown': 'nicht bekannt',
  'network.device.here': 'dieses Gerät',
  'network.device.revoke': 'Entziehen',
  'network.device.sure':
    '{name} den Zugang entziehen? Es zeigt und erfasst nichts mehr, bis es wieder gekoppelt ist.',
  'network.device.yes': 'Ja, entziehen',
  'network.device.no': 'Behalten',
  'network.keys.also': 'Mit den Schlüsseln des Netzes und den gekoppelten Geräten',
  'network.keys.warning':
    'Wer diese Datei hat, kann sich als dieser Werkstattrechner ausgeben und alles lesen und ändern, was gesendet wird. Bewahren Sie sie unter Verschluss auf, auf keiner Platte, die andere benutzen. Mit ihr kann ein anderer Rechner an die Stelle von diesem treten, und kein Gerät muss neu gekoppelt werden.',
  'network.keys.export': 'Alles ausgeben, mit den Schlüsseln',
  'network.keys.restored':
    'Auch die Schlüssel des Netzes und die gekoppelten Geräte sind eingesetzt: Geräte, die den anderen Werkstattrechner kannten, kennen diesen.',
  'api.no-network-keys': 'Es gibt noch keine Schlüssel des Netzes: Es war nie eingeschaltet.',
  'api.not-paired': 'Dieses Gerät ist nicht mit der Werkstatt gekoppelt.',
  'api.network-shut': 'Das Netz der Werkstatt ist aus.',
  'api.only-here': 'Das geht nur am Rechner der Werkstatt selbst.',
  'api.pairing-wrong':
    'Das ist nicht, was das Büro zeigt, oder es gilt nicht mehr: Jeder Code gilt für ein Gerät und zehn Minuten. Lassen Sie im Büro einen neuen zeigen.',
  'api.pairing-unproved': 'Ein Gerät wird nur von einer Seite aus gekoppelt, deren Zertifikat es vertraut.',
  'api.pairing-here': 'Der Rechner der Werkstatt selbst braucht keine Kopplung.',
  'api.device-unknown': 'Dieses Gerät gibt es nicht. Vielleicht wurde ihm der Zugang schon entzogen.',
  'api.devices-full': 'Es sind schon {most} Geräte. Entziehen Sie zuerst einem den Zugang.',
  'api.network-no-pin': 'Das Netz braucht eine PIN: Legen Sie zuerst eine fest.',
  'api.network-told': 'Ob das Netz an ist, wurde beim Start des Programms gesagt.',
  'api.network-off': 'Schalten Sie zuerst das Netz ein.',
  'pairing.title': 'Dieses Gerät mit der Werkstatt koppeln',
  'pairing.code': 'Code, den das Büro zeigt',
  'pairing.scanned': 'Der Code wurde gescannt.',
  'pairing.name': 'Name dieses Geräts',
  'pairing.name.note': 'Etwa: Tablet an der Kreissäge',
  'pairing.station': 'Wo steht es?',
  'pairing.pair': 'Dieses Gerät koppeln',
  'pairing.done': 'Gekoppelt: {name}.',
  'pairing.already': 'Dieses Gerät ist schon gekoppelt: {name}.',
  'pairing.go': 'Zur Station',
  'pairing.here': 'Dies ist der Rechner der Werkstatt selbst. Er braucht keine Kopplung.',
  'pairing.away': 'Der Rechner der Werkstatt antwortet nicht. Ist dieses Gerät im Netz der Werkstatt?',
  'untrusted.title': 'Dieses Gerät vertraut dem Zertifikat der Werkstatt nicht',
  'untrusted.why':
    'Die Seite wurde durch eine Warnung hindurch geöffnet. Wer zwischen diesem Gerät und dem Rechner der Werkstatt sitzt, könnte alles lesen und ändern; darum wird hier nichts gezeigt und nichts erfasst.',
  'untrusted.what':
    'Lassen Sie sich im Büro unter „Netz“ die Bilder für ein Gerät zeigen. Öffnen Sie über das erste die Vertrauensseite, folgen Sie ihren Schritten, schließen Sie den Browser und öffnen Sie diese Adresse noch einmal.',
  'untrusted.other':
    'Ist es ein privates Fenster, oder ein Browser, der nichts aufhebt? Dann nehmen Sie ein gewöhnliches Fenster: Die Station muss Erfasstes aufheben, solange der Rechner der Werkstatt weg ist.',
  'trust.title': 'Dieser Werkstatt vertrauen',
  'trust.what':
    'Ein Gerät muss dem Zertifikat der Werkstatt vertrauen, bevor es eine Station zeigen kann. Das Zertifikat steht allein für die Rechner dieser Werkstatt: Adressen in privaten Netzen und Namen, die auf .local enden. Es steht für keine Bank, kein Geschäft und keine andere Seite.',
  'trust.compare': 'Zuerst vergleichen',
  'trust.compare.how':
    'Jeder im Netz könnte eine Seite wie diese zeigen. Gehen Sie ins Büro und vergleichen Sie. Nur weiter, wenn jeder Buchstabe und jede Ziffer gleich ist.',
  'trust.save': 'Das Zertifikat speichern',
  'trust.save.crt': 'Zertifikat (Android, Windows, macOS, Linux)',
  'trust.save.profile': 'Profil (iPhone, iPad)',
  'trust.steps': 'Dem Zertifikat vertrauen',
  'trust.others': 'Auf einem anderen Gerät',
  'trust.not-tried':
    'Diese Schritte haben wir nicht ausprobiert. Menüs sind von Version zu Version verschieden.',
  'trust.tried':
    'Ausprobiert mit Chromium unter Linux, wo der Befehl certutil das Zertifikat einsetzte. Die Menüs unten wurden nicht ausprobiert.',
  'trust.android': 'Android',
  'trust.android.1': 'Das Zertifikat oben speichern.',
  'trust.android.2':
    'Einstellungen öffnen, dann Sicherheit und Datenschutz, Weitere Sicherheitseinstellungen, Verschlüsselung und Anmeldedaten, Zertifikat installieren, CA-Zertifikat.',
  'trust.android.3': 'Die Warnung lesen, „Trotzdem installieren“ wählen und die gespeicherte Datei nehmen.',
  'trust.ios': 'iPhone, iPad',
  'trust.ios.1': 'Das Profil oben mit Safari speichern und „Zulassen“ wählen.',
  'trust.ios.2': 'Einstellungen öffnen: Oben steht „Profil geladen“. Es öffnen und „Installieren“ wählen.',
  'trust.ios.3':
    'Einstellungen öffnen, dann Allgemein, Info, Zertifikatsvertrauenseinstellungen, und das Zertifikat der Werkstatt einschalten.',
  'trust.windows': 'Windows',
  'trust.windows.1': 'Das Zertifikat oben speichern und die Datei öffnen.',
  'trust.windows.2':
    '„Zertifikat installieren“ wählen, dann „Aktueller Benutzer“, dann „Alle Zertifikate in folgendem Speicher speichern“.',
  'trust.windows.3':
    '„Vertrauenswürdige Stammzertifizierungsstellen“ wählen, fertigstellen, den Fingerabdruck vergleichen und mit Ja antworten.',
  'trust.mac': 'macOS',
  'trust.mac.1':
    'Das Zertifikat oben speichern und die Datei öffnen: Die Schlüsselbundverwaltung nimmt es auf.',
  'trust.mac.2':
    'In der Liste der Schlüsselbundverwaltung das Zertifikat öffnen, dann „Vertrauen“ aufklappen.',
  'trust.mac.3':
    'Bei „Secure Sockets Layer“ „Immer vertrauen“ wählen, das Fenster schließen und das Passwort eingeben.',
  'trust.linux': 'Linux',
  'trust.linux.1': 'Das Zertifikat oben speichern.',
  'trust.linux.2':
    'Chromium: chrome://certificate-manager öffnen, dann „Von Ihnen installiert“, „Vertrauenswürdige Zertifikate“, „Importieren“. Firefox: Einstellungen öffnen, dann Datenschutz und Sicherheit, Zertifikate anzeigen, Zertifizierungsstellen, Importieren.',
  'trust.linux.3': 'Die gespeicherte Datei nehmen und ihr für Websites vertrauen.',
  'trust.then': 'Danach',
  'trust.then.what': 'Den Browser schließen, wieder öffnen und im Büro das Bild zum Koppeln scannen.',
  'trust.remove': 'Um der Werkstatt nicht mehr zu vertrauen, das Zertifikat an derselben Stelle entfernen.',
};
