import type { Words } from '../language.ts';

/** How the work of a stage goes, where its numbers do not say it. */
export const steps: Words = {
  'how.groove.1': 'Innenkante unten. Zwei Durchgänge mit einer Einstellung: jede Fläche einmal am Anschlag.',
  'how.groove.mid.1':
    'Beide Kanten nacheinander unten. Zwei Durchgänge mit einer Einstellung: jede Fläche einmal am Anschlag.',
  'how.slot.1': 'Nur Vorderseite unten: der Anlaufring läuft an der hinteren Nutwange.',
  'how.slot.mid.1': 'Beide Kanten, nur Vorderseite unten: der Anlaufring läuft an der hinteren Nutwange.',
  'how.mortise.1': 'Vorderseite an jeder Stelle am Anschlag.',
  'how.mortise.2': '{part}, Ende {end}: an den Stoppklotz {endStop}.',
  'how.mortise.3':
    'Anschlag prüfen: in ein Probestück stemmen, es wenden, an derselben Stelle noch einmal. Der zweite Stich darf nichts wegnehmen.',
  'how.mitre-end.1': 'Innenkante unten, dieses Ende am Stoppklotz; das Blatt neigt sich zum Stoppklotz.',
  'how.notch.1':
    'Innenkante unten, Blatt senkrecht: Querschnitte nebeneinander von {from} bis {to}, dieses Ende am Stoppklotz; keiner über die Risse hinaus.',
  'how.strip.1':
    'Am Anschlag, auf Tischhöhe, einen Strich an die Vorderkante des Blatts ziehen: {reach} vor der Sägewelle.',
  'how.strip.2':
    'Am Längsfries {run} ab Ende {end} anreißen. Mit Seite {face} nach oben auflegen, dieses Ende voran.',
  'how.strip.3':
    'Einen Stoppklotz {set} hinter dem Strich festspannen, auf der fernen Seite: dort hält das Ende an. Der Anriss bleibt kurz vor dem Strich, den Rest nimmt das Stecheisen.',
  'how.strip.4':
    'Bis zum Stoppklotz schieben. Ausschalten, warten bis das Blatt steht, dann den Fries abheben.',
  'how.strip.5': 'An der oberen Fläche sind die letzten {lag} noch ungeschnitten: bis zum Riss stechen.',
  'how.shoulder.1': 'Beide Flächen, beide Enden; nie die Kanten.',
  'how.cheek.1': 'Fläche unten, beide Flächen, beide Enden: von der Brüstung bis zum Ende.',
  'how.cheek.pare.1': 'Dann den Zapfen auf {pareTo} Dicke hobeln, so weit wie seine Zapfenlöcher.',
  'how.haunch.pare.1': 'Den Nutzapfen hinten auf {pareTo} Dicke stechen, so weit wie seine Nut.',
  'how.mitre.1': 'Beide Enden, Innenkante unten.',
  'how.mitre.mid.1': 'Beide Enden beider Kanten: jede Innenkante einmal unten.',
  'how.tenon.1': 'Beide Enden: jede Kante einmal unten, mit eigenem Stoppklotz und eigener Blatthöhe.',
  'how.tenon.mid.1': 'Beide Enden beider Kanten, mit einem Stoppklotz und einer Blatthöhe.',
  'how.glue.1': 'Beide Diagonalen von Ecke zu Ecke messen, ohne Überstände: je {diagonal}.',
  'how.trim.1': 'Zuerst die Überstände absägen, dann die Kanten.',
  'nothing.finish':
    'Nichts einzustellen. Vor dem Verleimen rundum streichen, beide Flächen, alle Kanten und die Feder: wo sie schwindet, wird kein rohes Holz sichtbar.',
};
