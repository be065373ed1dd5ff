import type { Words } from '../../language.ts';

/** What can hurt where curves are sawn and sanded. */
export const cautionsOfCurves: Words = {
  'caution.arch.hands': 'Hände neben den Schnitt, nie vor das Blatt; Führung dicht über den Fries.',
  'caution.arch.blade':
    'Dieser Radius verträgt kein Blatt über {widestBlade}: ein breiteres klemmt, verdreht sich und kann reißen.',
  'caution.arch.carrier':
    'Lade und Drehpunkt festspannen, bevor das Blatt läuft; den Fries ohne Zwang schwenken.',
  'caution.arch.back':
    'Erst Entlastungsschnitte in den Abfall. Vor dem Zurückziehen ausschalten und warten, bis das Blatt steht.',
  'caution.cutout.guard':
    'Dünne Füllung: Führung bis dicht darüber. Hände neben den Schnitt, nie vor das Blatt.',
  'caution.cutout.blade':
    'Dieser Radius verträgt kein Blatt über {widestBlade}: ein breiteres klemmt und reißt die Füllung zur Seite.',
  'caution.cutout.support': 'Füllung stützen, wo sie über den Tisch ragt: kippt sie, packt das Blatt zu.',
  'caution.cutout.waste':
    'Ecken in Stücken absägen, mit Entlastungsschnitten. Abfall erst vom Tisch nehmen, wenn die Säge steht.',
  'caution.smooth.feed': 'Gegen die Drehrichtung schieben: mit ihr reißt die Walze den Fries aus der Hand.',
  'caution.smooth.fingers':
    'Den Fries an beiden Füßen halten, flach auf dem Tisch; kein Finger im Bogen an der Walze.',
  'caution.smooth.springing':
    'Mit der Rundung ansetzen, nicht mit der Ecke am Bogenanfang: die Ecke hakt ein.',
  'caution.smooth.dust': 'Schleifstaub ist so fein, dass er in die Lunge kommt: Absaugung an, Maske auf.',
};
