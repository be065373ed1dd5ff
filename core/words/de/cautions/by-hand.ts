import type { Words } from '../../language.ts';

/** What can hurt where a blank is milled, mortised, worked at the bench, put together and fitted. */
export const cautionsByHand: Words = {
  'caution.mill.hands':
    'Abrichte: Schutz über die Messer, Zuführhölzer in beiden Händen, keine Hand über der Welle.',
  'caution.mill.planer':
    'Dickte: ein Stück nach dem andern; daneben stehen, nie hineingreifen, solange sie einzieht.',
  'caution.mill.knots': 'Lose Äste, Risse und Sand fliegen oder haken: zuerst danach sehen; wenig abnehmen.',
  'caution.mortise.clamped':
    'Zwingen halten den Fries, nicht Hände: Finger weg, bevor der Meißel sich bewegt.',
  'caution.mortise.turning':
    'Kein Ärmel, kein Haar, kein Handschuh am drehenden Bohrer; Späne bei stehender Maschine wegbürsten.',
  'caution.mortise.jams':
    'Tiefes Loch: in Stufen stemmen. Gestopfte Späne rauchen, und der Meißel sitzt fest.',
  'caution.mortise.depth':
    'Tiefenanschlag ausgeschaltet stellen: der Meißel darf Tisch und Spanner nie erreichen.',
  'caution.mortise.long': 'Das überhängende Ende stützen: es darf nicht kippen, wenn die Zwinge gelöst wird.',
  'caution.pare.vise': 'Fries in die Zange, beide Hände hinter der Schneide des Stecheisens; vom Körper weg.',
  'caution.pare.sharp': 'Scharfes Eisen, dünne Späne: eines, das Gewalt braucht, rutscht aus dem Loch.',
  'caution.pare.wrist': 'Daumen und Handgelenk aus dem Weg des Eisens an der Lochwand.',
  'caution.clean.block':
    'Werkstück und Führungsklotz zusammen festspannen; beide Hände hinter der Schneide des Stecheisens.',
  'caution.clean.thin': 'Dünne Späne: ein dicker spaltet über den Riss, und das Eisen springt nach.',
  'caution.clean.tip': 'Die Gehrungsspitze ist kurzes Holz: ins Holz stechen, nie zu den Fingern.',
  'caution.haunch.saw': 'Fries in die Zange; der Daumen, der die Säge führt, bleibt weit über den Zähnen.',
  'caution.haunch.pare': 'Von beiden Kanten quer stechen, beide Hände hinter der Schneide des Stecheisens.',
  'caution.haunch.split':
    'Kurzes Holz: keine Schläge neben dem Zapfen. Es spaltet, und das Eisen fährt durch.',
  'caution.finish.rags':
    'Ölige Lappen entzünden sich von selbst: flach zum Trocknen ausbreiten oder in eine Blechdose mit Deckel.',
  'caution.finish.air': 'Frische Luft, keine Flamme, kein Funke; die Maske tragen, die das Mittel verlangt.',
  'caution.finish.skin':
    'Handschuhe und Brille bei Lösemitteln; zuerst Dose und Sicherheitsdatenblatt lesen.',
  'caution.dryfit.fingers': 'Finger aus jeder Fuge, bevor eine Zwinge gedreht wird; gleichmäßig anziehen.',
  'caution.dryfit.force':
    'Nie einen strengen Zapfen eintreiben: der Fries spaltet, die Zwinge springt ab. Nacharbeiten, neu versuchen.',
  'caution.dryfit.lift': 'Trocken halten nur die Zwingen: liegen lassen oder zu zweit wenden.',
  'caution.glue.lift': 'Große Türen in den Zwingen zu zweit wenden; Finger aus den Fugen.',
  'caution.glue.clamps':
    'Zwingen gleichmäßig anziehen, wenig auf einmal: eine, die abrutscht, schlägt zurück.',
  'caution.glue.skin':
    'Leim, der von selbst härtet, schadet Haut und Augen: Handschuhe, Brille, Luft; Datenblatt lesen.',
  'caution.trim.fall':
    'Tür verkeilen oder spannen, dass sie nicht fallen kann, bevor gehobelt oder gesägt wird.',
  'caution.trim.tool': 'Handmaschine mit beiden Händen führen; erst ablegen, wenn sie steht.',
  'caution.trim.horns':
    'Den Überstand beim Absägen halten: fällt er, reißt er den Fries ein und trifft den Fuß.',
  'caution.trim.hang': 'Große Türen zu zweit einhängen; Keile darunter, Finger aus der Bandseite.',
};
