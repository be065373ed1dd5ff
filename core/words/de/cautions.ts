import type { Words } from '../language.ts';

/** What can hurt at each station, and what comes before anything said here. */
export const cautions: Words = {
  'caution.first': 'Vor allem gelten Betriebsanleitung, örtliche Vorschriften und Unterweisung.',
  'caution.short': 'Kürzer als {least}: nie mit der Hand vorschieben; eine Zuführlade nehmen.',
  'caution.milling.1': 'Nur ebenes, gerades Holz über die Abrichte und durch die Dickte.',
  'caution.milling.2':
    'Nichts unter der Mindestlänge der Dickte: kurze Teile nachher von einem langen Stück schneiden.',
  'caution.milling.3': 'An der Abrichte Zuführhölzer nehmen; erst Fläche und Kante, dann die Dicke.',
  'caution.band-saw.1':
    'Blattführung dicht über das Holz stellen; das Blatt muss schmal genug für den Radius sein.',
  'caution.band-saw.2': 'Hände aus der Schnittlinie; vor dem Zurückziehen die Säge anhalten.',
  'caution.band-saw.3': 'Lade und Drehpunkt befestigen, bevor das Blatt läuft.',
  'caution.spindle-sander.1': 'Gegen die Drehrichtung schieben und den Fries in Bewegung halten.',
  'caution.spindle-sander.2':
    'Den Fries flach auf den Tisch legen; den Einsatz nehmen, der eng um die Walze passt.',
  'caution.spindle-sander.3': 'Absaugung einschalten und Maske tragen.',
  'caution.router-table.1':
    'Gegen die Drehrichtung schieben; das Werkstück nie zwischen Fräser und Anschlag klemmen.',
  'caution.router-table.2':
    'Mit Anlaufring am Stift ansetzen; wenig auf einmal abnehmen; Hirnholz hinterlegen.',
  'caution.router-table.3': 'Kurze Stücke in einer Lade halten; große Abplattfräser mit kleiner Drehzahl.',
  'caution.table-saw.1':
    'Vor Blattwechsel oder Neigen den Stecker ziehen; Haube und Spaltkeil, wo der Schnitt es zulässt.',
  'caution.table-saw.2':
    'Eingesetzter Längsschnitt: bis zum Stoppklotz, ausschalten, warten bis das Blatt steht. Nie bei drehendem Blatt zurückziehen.',
  'caution.table-saw.3':
    'Beim Ablängen nie Anschlag und Queranschlag zugleich. Säge anhalten, bevor Abschnitte entfernt werden.',
  'caution.table-saw.4': 'Schiebestock und Druckkamm nehmen; Neigung und Höhe am Abfallstück prüfen.',
  'caution.mortiser.1':
    'Werkstück nach unten und hinten spannen; erst Luft zwischen Bohrer und Meißel geben.',
  'caution.mortiser.2': 'Erst beide Enden stemmen, dann dazwischen; oft Späne räumen.',
  'caution.mortiser.3': 'Hände weg von Säule und Werkstück, solange der Meißel sich bewegt.',
  'caution.bench.1': 'Beide Hände hinter der Schneide des Stecheisens.',
  'caution.bench.2': 'Werkstück mit Zange oder Zwinge halten, nie mit der Hand.',
  'caution.bench.3': 'Führungsklotz festspannen, bevor das Eisen die Gehrung berührt.',
  'caution.assembly.1': 'Kein Leim in die Nut oder an die Füllung: sie muss frei bleiben.',
  'caution.assembly.2': 'Bevor der Leim anzieht: beide Diagonalen gleich, nicht windschief.',
  'caution.assembly.3': 'Große Türen zu zweit heben. Zwingen gleichmäßig anziehen; Finger aus der Fuge.',
  'caution.fitting.1': 'Tür stützen oder spannen, bevor gehobelt oder gesägt wird.',
  'caution.fitting.2': 'Von den Enden nach innen hobeln, damit keine Ecke ausbricht.',
  'caution.fitting.3': 'Zuerst die Bandseite prüfen; wenig abnehmen und die Tür wieder einhalten.',
};
