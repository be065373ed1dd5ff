/** How the work of a stage goes, line by line, where its numbers do not say it. */
export const howToWords = {
  'how.groove.1': 'Sight edge down. Two passes at one setting: one with each face to the fence.',
  'how.groove.mid.1':
    'Both edges, one after the other, each down. Two passes at one setting: one with each face to the fence.',
  'how.slot.1': 'Front down only: the bearing runs on the back wall.',
  'how.slot.mid.1': 'Both edges, front down only: the bearing runs on the back wall.',
  'how.mortise.1': 'Front against the fence at every place.',
  'how.mortise.2': '{part}, {end} end: against the {endStop} stop block.',
  'how.mortise.3':
    'Prove the fence: plunge a test piece, turn it over, plunge again in the same place. The second plunge must take nothing.',
  'how.mitre-end.1':
    'Sight edge down, this end against the stop block; the blade leans toward the stop block.',
  'how.notch.1':
    'Sight edge down, blade square: crosscuts side by side from {from} to {to}, this end against the stop block; none past the lines.',
  'how.strip.1':
    'Draw a line on the fence at the blade’s front, at table level: {reach} on your side of the arbor.',
  'how.strip.2': 'Mark the stile {run} from its {end} end. Lay it with its {face} up, that end first.',
  'how.strip.3':
    'Clamp a stop block {set} past the line, on the far side: the end stops there. The mark ends just short of the line, and the chisel takes the rest.',
  'how.strip.4':
    'Feed to the stop block. Switch off, wait until the blade has stopped, then lift the stile out.',
  'how.strip.5': 'On the top face the last {lag} is still uncut: pare it to the line.',
  'how.shoulder.1': 'Both faces, both ends; never the edges.',
  'how.cheek.1': 'Face down, both faces, both ends: from the shoulder to the end.',
  'how.cheek.pare.1': 'Then plane the tenon to {pareTo} thick, as wide as its mortises.',
  'how.haunch.pare.1': 'Pare the back of the haunch to {pareTo} thick, as wide as its groove.',
  'how.mitre.1': 'Both ends, sight edge down.',
  'how.mitre.mid.1': 'Both ends of both edges: each sight edge down in turn.',
  'how.tenon.1': 'Both ends: each edge down in turn, at its own stop block and blade height.',
  'how.tenon.mid.1': 'Both ends of both edges, at one stop block and blade height.',
  'how.glue.1':
    'Measure both diagonals from corner to corner of the door, horns not counted: {diagonal} each.',
  'how.trim.1': 'Saw off the horns first, then trim the edges.',
} as const;
