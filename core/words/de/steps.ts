import type { Words } from '../language.ts';

/** How the work of a stage goes, line by line. */
export const steps: Words = {
  'how.mill.stile.1': 'Holz: gerade gewachsen, kein Ast, wo ein Zapfenloch hinkommt.',
  'how.mill.rail.1': 'Holz: gerade gewachsen, kein Ast, wo die Zapfen hinkommen.',
  'how.mill.arched.1': 'Holz: die Faser läuft mit dem Bogen, kein Ast, wo die Zapfen hinkommen.',
  'how.mill.panel.1': 'Holz: Faser von unten nach oben, die bessere Fläche VORN.',
  'how.mill.panel-arched.1': 'Holz: Faser von unten nach oben, die Maserung steigt in den Bogen auf.',
  'how.mill.1': 'Eine Fläche abrichten, eine Kante rechtwinklig dazu fügen.',
  'how.mill.2': 'Dicke {thickness}, Breite {width}: beide zuerst an einem Probestück messen.',
  'how.mill.3': 'Ein Ende rechtwinklig sägen, von dort auf {length} ablängen.',
  'how.mill.mark-stile.1':
    'VORN, OBEN und Innenkante anzeichnen: von vorn gesehen am linken Längsfries rechts, am rechten links.',
  'how.mill.mark-rail.1':
    'VORN und Innenkante anzeichnen: unten ist es die obere Kante des Frieses, oben die untere.',
  'how.mill.mark-mid.1': 'VORN und die obere Kante anzeichnen; beide Kanten sind Innenkanten.',
  'how.mill.mark-panel.1': 'VORN und OBEN anzeichnen.',
  'how.arch.1':
    'Anreißen: Mittellinie {centre} ab Ende; an der Innenkante die Bogenansätze, jeder {springing} ab seinem Ende.',
  'how.arch.2':
    'In der Lade: Drehpunkt auf der Mittellinie, {pivot} unter der Innenkante der geraden Stücke.',
  'how.arch.3': 'Vom Drehpunkt zur fernen Seite des Blatts: {radiusSet}. Der Riss liegt bei {radius}.',
  'how.arch.4':
    'An einem Probestück prüfen: Stichhöhe {rise} über der Sehne {chord}, der Schnitt {share} unter dem Riss.',
  'how.arch.5':
    'Von einem Bogenansatz zum anderen sägen; die geraden Stücke bleiben. Die letzten {share} nimmt die Walze.',
  'how.smooth.1': 'Schleifwalze von {drum} aufspannen.',
  'how.smooth.2':
    'Ansehen, wie die Walze dreht, und den Fries nur dagegen führen, auch wo eine Zeichnung es anders zeigt.',
  'how.smooth.3': 'Am gesägten Probestück prüfen: die geschliffene Kante ist rechtwinklig zur Fläche.',
  'how.smooth.4':
    'Von Bogenansatz zu Bogenansatz bis zum Riss mit Radius {radius} schleifen; die geraden Stücke bleiben.',
  'how.smooth.5': 'Die Schablone an den Bogen halten: kein Licht dazwischen.',
  'how.bead.set.1': 'Fräser für den Stab von {bead}, seine Oberkante {cutterHeight} über dem Tisch.',
  'how.bead.set.2':
    'An einem gleich dicken Probestück prüfen, Vorderseite unten: der Stab liegt {fillet} unter der Vorderseite.',
  'how.bead.1': 'VORN unten, Innenkante zum Fräser, von Ende zu Ende.',
  'how.bead.mid.1': 'VORN unten, eine Kante zum Fräser, von Ende zu Ende.',
  'how.bead.mid.2': 'Ende für Ende wenden, VORN bleibt unten: jetzt die andere Kante.',
  'how.bead.arched.1':
    'In der Lade, VORN unten, Innenkante zum Fräser: gerade, Bogen, gerade ohne abzusetzen, Anlaufring an der Kante.',
  'how.bead.arched.2':
    'Nicht auf einmal: mit niedrigem Fräser beginnen, zwei oder drei leichte Durchgänge, der letzte bei {cutterHeight}.',
  'how.groove.set.1': 'Nutblatt von {blade} aufspannen.',
  'how.groove.set.2': 'Nutblatt {depth} hoch, Anschlag {fence} daneben.',
  'how.groove.set.3':
    'An einem gleich dicken Probestück prüfen, beide Durchgänge: Nut {width} breit, Nutwangen von {fence}.',
  'how.groove.1': 'Erster Durchgang: Innenkante unten, VORN am Anschlag.',
  'how.groove.2':
    'Zweiter Durchgang, gleiche Einstellung: Ende für Ende wenden, Innenkante bleibt unten, HINTEN am Anschlag.',
  'how.groove.mid.1': 'Beide Kanten nacheinander. Erster Durchgang: diese Kante unten, VORN am Anschlag.',
  'how.groove.mid.2':
    'Zweiter Durchgang, gleiche Einstellung: Ende für Ende wenden, gleiche Kante unten, HINTEN am Anschlag.',
  'how.slot.set.1':
    'Nutfräser {width} breit, seine Unterkante {cutterHeight} über dem Tisch, mit Anlaufring {depth} tief.',
  'how.slot.set.2':
    'An einem gleich dicken Probestück prüfen, Vorderseite unten: vor der Nut bleiben {cutterHeight}.',
  'how.slot.set.3':
    'Nicht auf einmal: zwei oder drei Durchgänge, erst mit größerem Anlaufring oder zurückgesetztem Anschlag, zuletzt voll.',
  'how.slot.1': 'Nur VORN unten, Innenkante zum Fräser: der Anlaufring läuft an der hinteren Nutwange.',
  'how.slot.mid.1':
    'Beide Kanten, nur VORN unten, Anlaufring an der hinteren Nutwange. Dazwischen Ende für Ende wenden.',
  'how.slot.arched.1':
    'In der Lade, nur VORN unten: gerade, Bogen, gerade ohne abzusetzen, Anlaufring an der hinteren Nutwange.',
  'how.mortise.1': 'Hohlmeißel {chisel}, Anschlag {fence} dahinter.',
  'how.mortise.2':
    'Tiefenanschlag: {depthFromEdge} unter der Innenkante, {depthFromGroove} unter dem Nutgrund.',
  'how.mortise.3':
    'Anschlag prüfen: ein Probestück stemmen, Ende für Ende wenden, gleiche Kante oben, ins selbe Loch: nichts darf weggehen.',
  'how.mortise.4':
    'Innenkante oben, Vorderseite an jeder Stelle am Anschlag: den Fries längs schieben, nie wenden.',
  'how.mortise.5': '{part}, Ende {end}: an den Stoppklotz {endStop}.',
  'how.mortise.6': '{place}: von {start} bis {stop} stemmen, gemessen ab Ende {end}; {plunges} Hübe.',
  'how.pare.1': 'Beide Wangen gleich weit nachstechen, bis das Zapfenloch {width} breit ist wie die Nut.',
  'how.pare.2':
    'Die Enden des Zapfenlochs bleiben. Mit dem geprüften Probezapfen versuchen: er geht von Hand hinein.',
  'how.mitre.set.1':
    'Blatt auf {tilt}, {height} hoch. Stoppklotz bis zur fernen Blattseite, auf Tischhöhe: {sightEdgeSet}.',
  'how.mitre.set.2':
    'An einem gleich dicken Probestück prüfen: der Schnitt ist {height} tief, mit {tilt} zur Kante.',
  'how.mitre.line.1':
    'An der Innenkante {sightEdge} ab Ende {end} anreißen: der Schnitt liegt {share} näher am Ende, den Rest nimmt das Stecheisen.',
  'how.mitre.end.1': 'Innenkante unten, Ende {end} am Stoppklotz; das Blatt neigt sich zum Stoppklotz.',
  'how.mitre.end.2':
    'Ein Schnitt nur an diesem Ende: den Fries nicht Ende für Ende wenden. Das andere Ende hat eigene Zahlen.',
  'how.mitre.lower.1':
    'Unter Mittelfries {k}, aber ab Ende OBEN: erst den Fries messen. Ist er nicht {partLength} lang, sitzt der Schnitt um so viel falsch.',
  'how.mitre.upper.1': 'Über Mittelfries {k}, ab Ende UNTEN gemessen.',
  'how.mitre.mid-end.1': 'Innenkante unten, Ende {end} am Stoppklotz; das Blatt neigt sich zum Stoppklotz.',
  'how.mitre.mid-end.2':
    'Ein Schnitt, nur an dieser Kante des Mittelfrieses: für die andere liegt das andere Ende an.',
  'how.mitre.1': 'Innenkante unten, ein Ende am Stoppklotz; das Blatt neigt sich zum Stoppklotz.',
  'how.mitre.2': 'Ende für Ende wenden, Innenkante bleibt unten: das andere Ende.',
  'how.mitre.mid.1': 'Beide Kanten: jetzt die andere Kante unten, wieder beide Enden.',
  'how.mitre.pare.1': 'Der Riss liegt bei {sightEdge}: die letzten {share} nimmt das Stecheisen.',
  'how.notch.set.1':
    'Blatt senkrecht. An einem gleich dicken Probestück prüfen: der Schnitt ist {height} tief.',
  'how.notch.set.2': 'Innenkante unten, Ende {end} zum Stoppklotz.',
  'how.notch.1':
    'Erster Schnitt: Stoppklotz bis zur nahen Blattseite {from}. Letzter Schnitt: bis zur fernen {to}.',
  'how.notch.2':
    'Dazwischen Querschnitte nebeneinander, keiner über die Risse hinaus: die Lücke ist {length} lang.',
  'how.notch.end.1': 'Zuerst der Schnitt am Riss: Stoppklotz bis zur fernen Blattseite {to}.',
  'how.notch.end.2': 'Dann Querschnitte nebeneinander bis zum Ende {end}, keiner über den Riss hinaus.',
  'how.notch.pare.1': 'Die Grate zwischen den Schnitten nimmt das Stecheisen.',
  'how.strip.1':
    'Anschlag {fenceSet} rechts vom Blatt, Blatt {bladeHeight} hoch. Ein Probestück wird {fenceSet} breit.',
  'how.strip.2':
    'Am Anschlag, auf Tischhöhe, einen Strich an die Vorderkante des Blatts ziehen: {reach} vor der Sägewelle.',
  'how.strip.3':
    'Am Längsfries {run} ab Ende {end} anreißen. Seite {face} nach oben, dieses Ende voran, Außenkante am Anschlag.',
  'how.strip.4':
    'Stoppklotz {runSet} hinter dem Strich festspannen, auf der fernen Seite. Dort hält das Ende, der Anriss {share} vor dem Strich.',
  'how.strip.5':
    'Bis zum Stoppklotz schieben. Ausschalten, warten bis das Blatt steht, dann den Fries abheben.',
  'how.strip.6':
    'An der oberen Fläche sind die letzten {lag} noch ungeschnitten: bis zum Riss stechen, auch die letzten {share} entlang.',
  'how.strip.band.1': 'Anschlag {fenceSet} rechts vom Blatt. Ein Probestück wird {fenceSet} breit.',
  'how.strip.band.2':
    'Am Längsfries {run} ab Ende {end} anreißen. Seite {face} nach oben, dieses Ende voran, Außenkante am Anschlag.',
  'how.strip.band.3':
    'Stoppklotz {runSet} hinter den Zähnen festspannen, auf der fernen Seite: dort hält das Ende, kurz vor dem Anriss.',
  'how.strip.band.4':
    'Bis zum Stoppklotz schieben. Ausschalten, warten bis das Blatt steht, dann den Fries zurückziehen.',
  'how.strip.band.5': 'Am Ende des Schnitts und an ihm entlang nimmt die letzten {share} das Stecheisen.',
  'how.clean.1':
    'Den 45°-Führungsklotz an den Riss einer Gehrung setzen und stechen, bis das Eisen am Klotz anliegt.',
  'how.clean.stile.1': 'Risse an der Innenkante, ab Ende UNTEN: {bottomLines}.',
  'how.clean.stile.2': 'Risse an der Innenkante, ab Ende OBEN: {topLines}.',
  'how.clean.stile.3': 'Wo der Stab weg ist, die Kante eben stechen, {bead_bead} hinter der Innenkante.',
  'how.clean.rail.1': 'An jedem Ende liegt der Riss an der Innenkante {mitre_sightEdge} ab Ende.',
  'how.clean.mid.1': 'An jedem Ende beider Kanten liegt der Riss {mitre_sightEdge} ab Ende.',
  'how.clean.rail-shoulder.1': 'Von den Brüstungen nichts wegnehmen: sie sind auf den Riss gesägt.',
  'how.shoulder.set.1': 'Blatt senkrecht, {height} hoch. Stoppklotz bis zur fernen Blattseite: {stop}.',
  'how.shoulder.set.2':
    'An einem gleich dicken Probestück prüfen: die ferne Seite des Schnitts liegt {stop} ab Ende.',
  'how.shoulder.1':
    'Eine Fläche unten, ein Ende am Stoppklotz. Gleiche Fläche unten, Ende für Ende wenden: das andere Ende.',
  'how.shoulder.2': 'Die andere Fläche nach unten: wieder beide Enden. Nie die Kanten.',
  'how.shoulder.3': 'Auf den Riss gesägt: für das Stecheisen bleibt nichts.',
  'how.shoulder.arched.1':
    'Die Bogenkante liegt nur mit ihren zwei geraden Stücken am Queranschlag an: in der Lade halten.',
  'how.cheek.set.1':
    'Blatt {height} hoch, Stoppklotz {shoulder_stop} bis zur fernen Blattseite: beide wie bei den Brüstungen.',
  'how.cheek.set.2':
    'An einem gleich dicken Probestück prüfen, beide Flächen: ein Zapfen von {thickness} Dicke bleibt.',
  'how.cheek.set.3':
    'Von Hand zu schieben: das Blatt bis {hair} höher, nie tiefer; über beide Flächen {push}.',
  'how.cheek.1':
    'Eine Fläche unten: Querschnitte nebeneinander von der Brüstung zum Ende, keiner darüber hinaus; Grate nimmt das Stecheisen.',
  'how.cheek.2':
    'Gleiche Fläche unten, Ende für Ende wenden: das andere Ende. Dann die andere Fläche nach unten: wieder beide Enden.',
  'how.cheek.pare.1': 'Dann den Zapfen auf {pareTo} Dicke hobeln, so weit wie seine Zapfenlöcher.',
  'how.tenon.inner.1':
    'Innenkante unten: Blatt {innerHeight} hoch, Stoppklotz {innerStop} bis zur fernen Blattseite.',
  'how.tenon.outer.1':
    'Außenkante unten: Blatt {outerHeight} hoch, Stoppklotz {outerStop} bis zur fernen Blattseite.',
  'how.tenon.outer.2':
    'Dort bleibt der Nutzapfen stehen, {haunch_length} lang: kein Schnitt über diesen Stoppklotz hinaus.',
  'how.tenon.1':
    'Je Einstellung Querschnitte nebeneinander bis zum Ende. Gleiche Kante unten, Ende für Ende wenden: das andere Ende.',
  'how.tenon.mid.1':
    'Beide Kanten mit einer Einstellung, jede einmal unten: Blatt {innerHeight} hoch, Stoppklotz {innerStop} bis zur fernen Blattseite.',
  'how.tenon.mid-ends.1':
    'Querschnitte nebeneinander bis zum Ende. Gleiche Kante unten, Ende für Ende wenden: das andere Ende.',
  'how.flats.1': 'Innenkante unten steht der Fries nur auf seinen zwei geraden Stücken: in der Lade halten.',
  'how.tenon.test.1':
    'An einem Probestück so breit wie der Fries prüfen: der Zapfen ist {width} breit und geht in sein Zapfenloch.',
  'how.tenon.wide.1':
    'Breiter Zapfen: in zwei teilen, Nutzapfen dazwischen, wenn der Längsfries dort noch ganz ist; sonst die Kanten erleichtern.',
  'how.haunch.1':
    'An der Außenkante, neben dem Zapfen: {length} lang ab Brüstung, {height} hoch bis zu dieser Kante.',
  'how.haunch.2':
    'Sein Ende und die Ecke am Zapfen rechtwinklig stechen. Ist er zu lang, hält er die Brüstung offen.',
  'how.haunch.pare.1': 'Den Nutzapfen hinten auf {pareTo} Dicke stechen, so weit wie seine Nut.',
  'how.cutout.1': 'Mittellinie {centre} ab Kante anreißen, an beiden Kanten {sideHeight} ab der Unterkante.',
  'how.cutout.2': 'In der Lade: Drehpunkt auf der Mittellinie, {pivot} unter diesen zwei Rissen.',
  'how.cutout.3': 'Vom Drehpunkt zur nahen Seite des Blatts: {radiusSet}. Der Riss liegt bei {radius}.',
  'how.cutout.4': 'An einem Probestück prüfen: der Schnitt läuft {share} über dem Riss.',
  'how.cutout.5':
    'Die geraden Stücke an den Rissen sägen, {flat} ab jeder Kante; dann den Bogen um den Drehpunkt.',
  'how.cutout.6': 'Die letzten {share} des Bogens werden weggeschliffen.',
  'how.raise.1':
    'Fräser mit Abplattung {band}. Nicht auf einmal: niedrig beginnen, drei oder mehr Durchgänge, der letzte {depth} über dem Tisch.',
  'how.raise.2':
    'An einem gleich dicken Probestück prüfen, Rückseite unten: die Feder, die bleibt, gleitet in der Nut.',
  'how.raise.3': 'HINTEN unten an jeder Kante: zuerst quer zur Faser, UNTEN und OBEN, dann an beiden Seiten.',
  'how.raise.4': 'Der letzte Durchgang rundum bei {depth}: die Feder ist {tongue}.',
  'how.raise.arched.1': 'Der Bogen OBEN läuft am Anlaufring des Fräsers, ohne Anschlag.',
  'how.dryfit.1':
    'In einen Längsfries: die Querfriese von unten nach oben, die Füllungen dazwischen. Dann der andere Längsfries.',
  'how.dryfit.2': 'Leicht zusammenziehen: jede Brüstung dicht, jede Gehrung vorn geschlossen.',
  'how.dryfit.3':
    'Bleibt eine Brüstung offen: suchen, was sie hält (Nutzapfen, Füllung, Zapfenlochgrund), und dort nachstechen.',
  'how.glue.1': 'In der Folge des trockenen Zusammensteckens fügen, Leim an Zapfen und in Zapfenlöcher.',
  'how.glue.2': 'Beide Diagonalen von Ecke zu Ecke messen, ohne Überstände: je {diagonal}.',
  'how.glue.3': 'Ist eine länger, die Zwingen etwas schräg zu ihr hin stellen, bis beide gleich sind.',
  'how.trim.1': 'Zuerst die Überstände absägen: {horn} an jedem Ende.',
  'how.trim.2': 'Dann die Kanten trimmen, an jeder was dort abkommt.',
  'nothing.finish':
    'Nichts einzustellen. Vor dem Verleimen rundum streichen, beide Flächen, alle Kanten und die Feder: wo sie schwindet, wird kein rohes Holz sichtbar.',
};
