import type { Words } from '../language.ts';

/** What keeps a door from being made, and what a foreman would say of one that can be made. */
export const findings: Words = {
  'left.nothing': 'nichts',
  'left.short': 'nichts ({short} zu wenig)',
  'fault.sight-width':
    'die Längsfriese von {stile} lassen {sightWidth} von einer {builtWidth} breiten Tür: schmalere Längsfriese',
  'fault.sight-height':
    'zwischen den Querfriesen bleibt {sightHeight}: schmalere Querfriese, oder welche weglassen',
  'fault.mid-rails-overlap':
    'der Mittelfries bei {centre} liegt um {overlap} über dem Fries darunter: höher setzen oder schmaler machen',
  'fault.groove-thickness':
    'eine Nut von {groove} lässt nichts von Holz {thickness}: schmalere Nut oder dickeres Holz',
  'fault.bead-wall':
    'ein Stab von {bead} ist tiefer als die Nutwange von {wall}: kleinerer Stab, schmalere Nut oder dickeres Holz',
  'fault.oversize':
    'ein Übermaß von {oversize} macht die Tür kleiner als die Öffnung ohne zweimal die Luft von {reveal}: mindestens {least}',
  'fault.oversize.side':
    'die Tür, wie gebaut, endete {missing} vor ihrer fertigen Kante ({side}): dort mindestens {needs} Luft, oder mindestens {least} Übermaß',
  'fault.groove-mortise':
    'eine {depth} tiefe Nut reicht über Stab {bead} und Zapfen {tenon} hinaus: flachere Nut oder längerer Zapfen',
  'fault.tenon-width': '{part}: für den Zapfen bleibt {width}: breiterer Fries oder kleinere Absätze',
  'fault.tenon-chisel':
    '{part}: der Zapfen wäre {width} breit, schmaler als der Meißel von {chisel}: breiterer Fries oder kleinere Absätze',
  'fault.no-chisel':
    'kein Hohlmeißel der Werkstatt ({chisels}) ist so schmal wie die Nut von {groove}: breitere Nut oder schmalerer Meißel',
  'fault.no-dado':
    'kein Nutblatt der Werkstatt ({dados}) liegt zwischen der halben und der ganzen Nut von {groove}: andere Nut oder anderes Blatt',
  'fault.behind-mortise':
    'hinter einem {depth} tiefen Zapfenloch bliebe {left}, sobald {trim} abgenommen ist, und es braucht {least}: breiterer Längsfries oder kürzerer Zapfen',
  'fault.cover':
    'außen am Zapfen bliebe nichts, sobald {trim} abgenommen ist: Absatz außen größer als {trim}',
  'fault.end-play':
    'ein Spiel von {endPlay} öffnet das Zapfenloch am Ende, sobald {trim} abgenommen ist: weniger als {most}',
  'fault.behind-groove': '{part}: hinter der Nut bliebe {left}: breiter machen, oder die Nut flacher',
  'fault.panel-hold':
    'eine Luft von {clearance} lässt der Füllung keinen Einstand in einer {depth} tiefen Nut: kleinere Luft oder tiefere Nut',
  'fault.panel-tongue':
    'ein Schiebesitz von {fit} lässt der Füllung keine Feder in einer Nut von {groove}: kleinerer Sitz bei den Werkzeugen, oder breitere Nut',
  'fault.arch-rise':
    'ein Bogen braucht eine Stichhöhe über 0; für einen geraden Querfries den Bogen weglassen',
  'fault.arch-chord':
    'zwei gerade Stücke von {flat} lassen {chord} für den Bogen in einer lichten Breite von {sightWidth}: kürzere gerade Stücke',
  'fault.arch-too-high':
    'eine Stichhöhe von {rise} ist mehr als die halbe Sehne {chord}: höchstens ein Halbkreis, also {most} oder weniger',
  'fault.blade-height':
    'Holz von {thickness} ist so dick, wie das Sägeblatt hoch geht ({greatest}): den Stab an der Bandsäge abtrennen, oder dünneres Holz',
  'fault.survey-impossible':
    'diese sechs Maße ergeben keine Öffnung: neu messen; die zwei Diagonalen sind vielleicht vertauscht',
  'fault.stile-short':
    '{part} endet {short} unter der Oberkante der Tür, wie gebaut, und nur {trim} kommt dort ab: {remedy}',
  'note.fillet-over-bead':
    'die Platte von {fillet} ist größer als der Stab von {bead}: ein größerer Stab sieht besser aus',
  'note.bead-small': 'ein Stab von {bead} ist unter {least} und kaum zu sehen',
  'note.groove-share': 'die Nut nimmt {groove} von Holz {thickness}: üblich ist ein Viertel bis die Hälfte',
  'note.wall-thin': 'Nutwangen von {wall} sind unter {least} und können brechen',
  'note.tenon-narrow':
    '{part}: der Zapfen, {width} breit, ist schmaler als zwei Nuten von {groove}: breiterer Fries oder kleinere Absätze',
  'note.tenon-short': 'ein {tenon} langer Zapfen ist kürzer als zwei Nuten von {groove}',
  'note.chisel-small':
    'der Meißel von {chisel} ist weniger als die halbe Nut von {groove}: viele Hübe nebeneinander',
  'note.dado-as-wide':
    'kein Nutblatt der Werkstatt ist schmaler als die Nut von {groove} und mindestens halb so breit: der zweite Durchgang verbreitert sie nur; ein schmaleres lässt sie vom Anschlag mitten',
  'note.groove-eats-tenon':
    '{part}: die Nut nimmt {eaten} von der Innenkante des Zapfens: seine wahre Breite ist {width}',
  'note.tenon-wide':
    '{part}: der Zapfen, {width} breit, ist breiter als {most}: von Hand in zwei teilen, quer zur Breite des Frieses, die Lücke bis auf die Länge des Nutzapfens zurückschneiden und den Längsfries in der Lücke ganz lassen',
  'note.behind-mortise': 'hinter einem {depth} tiefen Zapfenloch bleiben nur {left}: {least} ist sicherer',
  'note.cover':
    'die Außenkante des Zapfens ist nach dem Einpassen nur von {cover} gedeckt: {least} ist sicherer',
  'note.end-splits':
    'nur {left} vom Ende des Längsfrieses bis zum Zapfenloch: es kann reißen; ein längerer Überstand hilft ({least} zusammen)',
  'note.no-end-play': 'kein Spiel: der Zapfen muss auf die Länge des Zapfenlochs gepasst werden',
  'note.no-horn': 'kein Überstand: das Ende des Längsfrieses kann beim Stemmen reißen',
  'note.no-clearance': 'keine Luft unter dem Zapfen: Leim kann die Fuge offen halten',
  'note.haunch-tight':
    'kein Nutzapfenspiel: ist der Nutzapfen ein Haar zu lang, bleibt die Brüstung offen; üblich sind {usual}',
  'note.behind-groove': '{part}: hinter der Nut bleiben nur {left}: {least} ist sicherer',
  'note.panel-hold-small': 'die Füllung steht nur {hold} in ihrer Nut: {least} ist sicherer',
  'note.panel-hold-clearance':
    'die Füllung steht nur {hold} in ihrer Nut, nicht mehr als ihre Luft von {clearance}: sie kann auf einer Seite herausfallen',
  'note.panel-no-clearance': 'keine Luft: die Füllung kann nicht quellen',
  'note.panel-swells':
    'von {atBuild} Prozent Feuchte beim Verleimen auf {high} Prozent quillt die Füllung um {change}, und {room} sind frei: {remedy}',
  'note.panel-shrinks':
    'von {atBuild} Prozent Feuchte beim Verleimen auf {low} Prozent schwindet die Füllung um {change}; lose in ihrer Nut kann sie {room} verlieren, in der Mitte ihrer Enden gestiftet {pinned}: {remedy}',
  'note.arch-flat':
    'ein gerades Stück von {flat} ist nicht länger als der Stab von {bead}: der Bogen beginnt in der Verbindung; länger machen',
  'note.arch-short-grain':
    'eine Stichhöhe von {rise} auf einer Sehne von {chord} lässt kurze Faser am Bogenansatz',
  'note.bearing':
    'ein Anlaufring mit Radius {bearing} folgt keinem Bogen mit Radius {radius}: kleinerer Anlaufring',
  'note.drum':
    'keine Schleifwalze der Werkstatt passt in einen Bogen mit Radius {radius}: von Hand oder mit kleinerer Walze',
  'note.lag':
    'der Schnitt bleibt um {lag} zurück, über den Brüstungsriss bei {shoulderLine} hinaus: diesen Stab an der Bandsäge abtrennen',
  'note.panel-proud': 'eine Füllung von {thickness} steht hinten um {proud} vor',
  'note.panel-thin':
    'eine Füllung von {thickness} ist dünner als ihre Feder von {tongue}: sie klappert in der Nut',
  'note.band-narrow':
    'eine Abplattung von {band} ist schmaler, als die Nut tief ist ({depth}): die Füllung geht nicht ganz hinein',
  'note.does-not-cover':
    'wie gebaut deckt die Tür die Öffnung {where} nicht, um {missing}: ein Übermaß von {width} in der Breite und {height} in der Höhe würde es',
  'note.closure': 'eines der sechs Maße der Öffnung passt nicht zu den anderen, um {closure}: neu messen',
  'note.short-piece':
    '{part}: {length} lang, unter {least}: nie mit der Hand vorschieben; eine Lade nehmen (Schlitten oder Vorrichtung, die das Teil hält)',
  'remedy.clearance': 'eine Luft von {clearance} würde genügen',
  'remedy.groove': 'eine Luft von {clearance} in einer {depth} tiefen Nut würde genügen',
  'note.stile-short':
    '{part} endet {short} unter der Oberkante der Tür, wie gebaut; {trim} kommt dort ab, so reicht es noch: {remedy}',
  'note.stile-end-splits':
    '{part}: vom oberen Ende bis zum Zapfenloch bleiben nur {left}, das Ende kann spalten (sicherer {least})',
  'note.rail-stop':
    '{part} ist {length} lang geworden: mit dem Stoppklotz an beiden Enden bei {stop} bleiben die Schultern {shoulderToShoulder} auseinander; unter den Zapfen bleibt {room} frei',
  'note.rail-long':
    '{part} ist um {by} zu lang: die Zapfen stießen auf den Grund, wenn die Schultern {shoulderToShoulder} auseinander sind; auf {planned} absägen',
  'note.rail-short':
    '{part} ist um {by} zu kurz: die Zapfen hielten zu wenig, oder die Schultern lägen {by} enger als {shoulderToShoulder}; einen neuen von {planned} Länge zuschneiden',
  'note.grooves-differ':
    '{part}: die Nut ist {wide}, die des anderen Längsfrieses {narrow}; die Zapfen werden auf {narrow} gesägt und haben dort {play} Spiel: Furnier auf diese Wangen leimen',
  'note.stile-no-chisel':
    '{part}: kein Hohlmeißel der Werkstatt ist so schmal wie die Nut von {groove}: auf {planned} verbreitern',
  'note.panel-too-wide':
    '{part} ist {size} breit, und die Nuten sind am Grund {room} auseinander: sie geht nicht hinein; auf {planned} hobeln',
  'note.panel-too-long':
    '{part} ist {size} lang, und die Nuten sind am Grund {room} auseinander: sie geht nicht hinein; auf {planned} absägen',
  'note.panel-too-narrow':
    '{part} ist {size} breit und reicht nicht auf beiden Seiten in die Nut: eine neue von {planned} Breite machen',
  'note.panel-too-short':
    '{part} ist {size} lang und reicht nicht an beiden Enden in die Nut: eine neue von {planned} Länge machen',
  'remedy.horn': 'Überstände von {horn} an beiden Enden würden genügen, oder ein neuer',
  'remedy.new-part': 'ein neuer ist nötig, damit es dabei bleibt',
  'remedy.none':
    'keine Nut dieses Rahmens ist tief genug: Riftholz, ein anderes Holz oder eine schmalere Tür',
  'notes.title': 'Vor dem Schneiden prüfen',
  'notes.danger': 'Gefahr',
  'notes.warning': 'Warnung',
  'notes.advice': 'Rat',
  'notes.more': 'und {count} mehr',
};
