import type { Words } from '../../language.ts';

/** What can hurt in each cut at the table saw; of the stopped rip also at a band saw. */
export const cautionsOfSawing: Words = {
  'caution.groove.guard':
    'Haube über das Blatt, zwei Druckkämme. Spaltkeil nur für diesen Schnitt ab, gleich danach wieder dran.',
  'caution.groove.hidden':
    'Das Blatt schneidet verdeckt: keine Hand darüber oder dahinter; Zuführholz bis ganz ans Ende.',
  'caution.groove.lawful':
    'Wo Nutsägen nicht erlaubt sind, hier nicht nuten: mit dem Nutfräser, der anderen Art der Werkstatt.',
  'caution.groove.tips': 'Hochkant kippt es: hoher Anschlag dahinter, ein Druckkamm oben und einer unten.',
  'caution.groove.dado':
    'Nutsäge bei gezogenem Stecker wechseln; einmal von Hand an Einlage und Haube vorbei drehen.',
  'caution.shoulder.arched':
    'Bogenfries: nur seine zwei geraden Stücke liegen am Queranschlag, er wackelt. In die Lade spannen, nie mit der Hand halten.',
  'caution.shoulder.clamp':
    'Fries flach auf der Fläche, an den Queranschlag gespannt: das Blatt läuft verdeckt darunter.',
  'caution.shoulder.stop':
    'Stoppklotz an den Queranschlag, nicht der Anschlag: was zwischen ihm und Blatt klemmt, fliegt.',
  'caution.shoulder.turn': 'Säge anhalten, bevor der Fries gewendet wird; Haube über den Schnitt.',
  'caution.cheek.arched':
    'Bogenfries: nur seine zwei geraden Stücke liegen am Queranschlag, er wackelt. Bei jedem Schnitt in die Lade spannen.',
  'caution.cheek.bits':
    'Neben dem Blatt lösen sich dünne Scheiben: Säge anhalten, bevor sie weggewischt werden.',
  'caution.cheek.flat':
    'Den Fries flach halten, ein Niederhalter darüber: wo er sich hebt, packt das Blatt und wirft ihn.',
  'caution.cheek.passes':
    'Viele Schnitte ermüden: jedes Mal derselbe Griff an Anschlag und Zwinge, nie über dem Blatt.',
  'caution.tenon.arched':
    'Bogenfries hochkant: er steht auf zwei kleinen Füßen. Hohe Fläche und zwei Zwingen, nie mit der Hand.',
  'caution.tenon.edge':
    'Hochkant kippt der Fries: an eine hohe Fläche am Queranschlag spannen, Hände über der Zwinge.',
  'caution.tenon.set':
    'Andere Höhe, anderer Stopp für die andere Kante: ausschalten und warten, bis das Blatt steht.',
  'caution.tenon.bits': 'Stückchen zwischen Stoppklotz und Blatt fliegen: bei stehender Säge wegwischen.',
  'caution.tenon.guard': 'Haube über den Schnitt; nie über das Blatt zum fernen Ende greifen.',
  'caution.mitre.arched':
    'Bogenfries auf seinen kleinen Füßen: zwei Zwingen an eine hohe Fläche, sonst rollt er ins geneigte Blatt.',
  'caution.mitre.clamp':
    'Fries hochkant, Blatt geneigt: an eine hohe Fläche spannen. Säge anhalten, bevor Abschnitte entfernt werden.',
  'caution.mitre.fence':
    'Anschlag weit weg: als Stopp am Queranschlag klemmt er das lose Dreieck, und das Blatt wirft es.',
  'caution.mitre.clear':
    'Zum Neigen Stecker ziehen; Blatt von Hand drehen: es muss an Einlage, Haube und Anschlag vorbei.',
  'caution.mitre.wait': 'Lose Dreiecke liegen am Blatt: liegen lassen, bis es steht.',
  'caution.mitre-end.long':
    'Langer Längsfries: fernes Ende stützen, an eine hohe Fläche spannen. Säge anhalten, bevor Abschnitte entfernt werden.',
  'caution.mitre-end.lean':
    'Das Blatt neigt sich zum Stoppklotz: den Fries spannen, sonst wandert er an der Schräge und klemmt.',
  'caution.mitre-end.fence': 'Anschlag weit weg: beim Ablängen nie ein Stopp neben dem Queranschlag.',
  'caution.mitre-end.clear':
    'Zum Neigen Stecker ziehen; Blatt von Hand drehen: es muss an Einlage, Haube und hoher Fläche vorbei.',
  'caution.notch.bits':
    'Viele Schnitte, viele lose Stückchen: Säge anhalten, bevor eins berührt wird; nie wegschnippen.',
  'caution.notch.square':
    'Blatt wieder senkrecht und auf seine Höhe herunter vor dem ersten Schnitt; Haube darüber.',
  'caution.notch.clamp': 'Den Fries bei jedem Schnitt an eine hohe Fläche spannen, das ferne Ende gestützt.',
  'caution.notch.tired':
    'Schnitt um Schnitt rückt die Hand näher: derselbe Griff, an der Zwinge, und Pause zwischen den Enden.',
  'caution.strip.stop':
    'Eingesetzter Längsschnitt: bis zum Stoppklotz, ausschalten, warten bis das Blatt steht. Nie bei drehendem Blatt zurückziehen.',
  'caution.strip.bare':
    '{bladeHeight} Blatt sind bloß, bis der Fries es deckt, und die meisten Hauben sind bei diesem Schnitt ab: keine Hand in der Schnittlinie.',
  'caution.strip.beside':
    'Neben der Schnittlinie stehen, nie hinter dem Fries: er kann gerade nach hinten fliegen.',
  'caution.strip.switch':
    'Schalter in Reichweite von Knie oder Fuß: beide Hände bleiben am Fries, bis das Blatt steht.',
  'caution.strip.hold':
    'Niederhalter über dem Fries, Druckkamm vor dem Blatt, keiner daneben: dort klemmt er.',
  'caution.strip.band-hands':
    'Schiebestock, Hände neben den Schnitt, nie vor das Blatt; Führung dicht über den Fries.',
  'caution.strip.band-stop':
    'Am Stoppklotz ausschalten und warten, bis das Blatt steht; dann den Fries gerade herausziehen.',
  'caution.strip.band-drift':
    'Ein Blatt, das verläuft, zieht den Fries vom Anschlag: den Anschlag am Abfallstück danach richten.',
  'caution.strip.band-support':
    'Das ferne Ende auf Tischhöhe stützen: wo der Fries absinkt, klemmt der Schnitt das Blatt.',
};
