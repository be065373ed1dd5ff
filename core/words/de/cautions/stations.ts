import type { Words } from '../../language.ts';

/** What can hurt at a station whatever is done there. */
export const cautionsAtStations: Words = {
  'caution.milling.1': 'Nur ebenes, gerades Holz über die Abrichte und durch die Dickte.',
  'caution.milling.2':
    'Nichts unter der Mindestlänge der Dickte: kurze Teile nachher von einem langen Stück schneiden.',
  'caution.milling.3': 'Erst Fläche und Kante an der Abrichte; dann die Dicke.',
  'caution.band-saw.1': 'Blattführung dicht über das Holz stellen; Hände aus der Schnittlinie.',
  'caution.band-saw.2':
    'Säge anhalten, bevor aus dem Schnitt zurückgezogen und bevor der Tisch abgeräumt wird.',
  'caution.band-saw.3': 'Ein tickendes Blatt hat einen Riss: ausschalten, Radkästen zu, bis die Säge steht.',
  'caution.spindle-sander.1':
    'Erst ansetzen, wenn die Walze ihre Drehzahl hat; das Werkstück in Bewegung halten.',
  'caution.spindle-sander.2':
    'Den Einsatz nehmen, der eng um die Walze passt; Walzen bei gezogenem Stecker wechseln.',
  'caution.spindle-sander.3': 'Absaugung einschalten und Maske tragen.',
  'caution.router-table.1':
    'Gegen die Drehrichtung schieben; das Werkstück nie zwischen Fräser und Anschlag klemmen.',
  'caution.router-table.2':
    'Mit Anlaufring am Stift ansetzen; wenig auf einmal abnehmen; Hirnholz hinterlegen.',
  'caution.router-table.3': 'Fräser bei gezogenem Stecker wechseln; kurze Stücke in einer Lade halten.',
  'caution.table-saw.1':
    'Vor Blattwechsel oder Neigen den Stecker ziehen; Haube und Spaltkeil, wo der Schnitt es zulässt.',
  'caution.table-saw.2':
    'Beim Ablängen nie Anschlag und Queranschlag zugleich. Säge anhalten, bevor Abschnitte entfernt werden.',
  'caution.table-saw.3': 'Schiebestock und Druckkamm nehmen; Neigung und Höhe am Abfallstück prüfen.',
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
