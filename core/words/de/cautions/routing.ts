import type { Words } from '../../language.ts';

/** What can hurt where beads and grooves are routed and panels raised. */
export const cautionsOfRouting: Words = {
  'caution.bead.arched-carrier':
    'Bogenfries: nie mit der Hand vorschieben, egal wie lang. In eine Schablonenlade mit Griffen spannen.',
  'caution.bead.arched-passes':
    'In zwei oder drei leichten Durchgängen: ein tiefer erster reißt den Fries weg und die Hände hinterher.',
  'caution.bead.arched-grain':
    'An beiden Bogenanfängen läuft die Faser kurz aus und kann reißen: dort langsam, beide Hände an den Griffen.',
  'caution.bead.arched-start':
    'Mit der Schablone am Stift ansetzen, dann sacht an den Anlaufring; gegen die Drehrichtung schieben.',
  'caution.bead.feed':
    'Gegen die Drehrichtung schieben; das Werkstück nie zwischen Fräser und Anschlag klemmen.',
  'caution.bead.feather':
    'Druckkämme halten es an Anschlag und Tisch; ein Zuführholz schiebt, Finger weg von der Kante.',
  'caution.bead.ends': 'Am Anfang und am Ende des Schnitts schlägt das Holz: dort keine Hand nahe am Fräser.',
  'caution.bead.short': 'Kurze Stücke in einer Lade fräsen, oder zwei in einer Länge, nachher getrennt.',
  'caution.slot.arched-carrier':
    'Nutfräser am Bogenfries: nie mit der Hand, egal wie lang. Schablonenlade, Griffe, Zwingen.',
  'caution.slot.arched-passes':
    'Tiefe in zwei oder drei Durchgängen, erst mit größerem Anlaufring: der Nutfräser packt mehr, als man sieht.',
  'caution.slot.arched-grain':
    'Kurze Faser an beiden Bogenanfängen: die dünne Nutwange bricht, und der Fries fliegt. Dort langsam.',
  'caution.slot.arched-start': 'Schablone zuerst an den Stift; gegen die Drehrichtung schieben, nie mit ihr.',
  'caution.slot.hidden':
    'Der Fräser läuft verdeckt in der Kante: Finger weg von dieser Kante, vor allem wo er austritt.',
  'caution.slot.feather':
    'Druckkämme halten es an Anschlag und Tisch; mit dem Zuführholz gegen die Drehrichtung schieben.',
  'caution.slot.passes': 'Tiefe in zwei oder drei Durchgängen: den Anschlag jedes Mal etwas zurücksetzen.',
  'caution.slot.short': 'Kurze Stücke in einer Lade nuten, mit Zwingen; nie mit den Fingerspitzen.',
  'caution.raise.arched':
    'Bogenseite: kein Anschlag führt sie. Schablonenlade mit Griffen, an Anlaufring und Stift, wenig auf einmal.',
  'caution.raise.trap':
    'Die Füllung nie zwischen Fräser und Anschlag klemmen: der Fräser läuft im Anschlag, Haube darüber.',
  'caution.raise.speed':
    'Großer Fräser, kleine Drehzahl: nach seinem Durchmesser, nie über der Höchstzahl, die auf ihm steht.',
  'caution.raise.depth': 'Die Tiefe in drei oder mehr Durchgängen, der letzte der leichteste.',
  'caution.raise.ends': 'Hirnholz zuerst, UNTEN und OBEN, ein Klotz hinter der Ecke; danach beide Seiten.',
  'caution.raise.hands':
    'Zuführhölzer flach auf die Füllung; kein Finger über der Kante oder unter der Ecke.',
};
