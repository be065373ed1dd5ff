import { cautions } from './en-gb/cautions.ts';
import type { LanguageTable } from './language.ts';

/** British English: only what is spelled or called otherwise than in English as Americans write it. */
export const enGB: LanguageTable = {
  name: 'English (UK)',
  locale: 'en-GB',
  firstDay: 1,
  words: {
    ...cautions,
    'drawing.front-toward-you': 'FRONT towards you',
    'drawing.back-toward-you': 'BACK towards you',
    'drawing.near-end': 'end towards you',
    'drawing.toward-you': 'towards you',
    'drawing.gauge': 'mitre gauge',
    'fit.off': 'Comes off, measured inwards from each edge as it is now; horns first',
    'told.marks': 'This job is in millimetres: leave the foot and inch marks out.',
    'form.label.midRails.centre': 'Mid rail’s centre, from the bottom',
    'form.own.note': 'For this door alone; what is left empty is as for all doors, shown in grey.',
    'form.help.width': 'Of the opening itself, side to side; the program takes off the gap round the door.',
    'form.help.midRails':
      'Rails between bottom and top; the centre of each is measured from the bottom of the door as built, horns not counted.',
    'form.help.reveal': 'The gap all round between the finished door and its opening.',
    'how.arch.1':
      'Mark the centre line {centre} from the end, and on the sight edge each springing, {springing} from its end.',
    'how.arch.2': 'In its carrier: pivot on the centre line, {pivot} below the sight edge of the flats.',
    'how.mitre.end.1':
      'Sight edge down, {end} end against the stop block; the blade leans towards the stop block.',
    'how.mitre.mid-end.1':
      'Sight edge down, {end} end against the stop block; the blade leans towards the stop block.',
    'how.mitre.1': 'Sight edge down, one end against the stop block; the blade leans towards the stop block.',
    'how.strip.4':
      'Cramp a stop block {runSet} past the line, on the far side. The end stops there, the mark {share} short of the line.',
    'how.strip.band.3':
      'Cramp a stop block {runSet} past the teeth, on the far side: the end stops there, short of the mark.',
    'how.clean.1':
      'Set the 45° guide block to a mitre’s line and pare until the chisel lies flat on the block.',
    'how.cutout.1':
      'Mark the centre line {centre} from an edge, and both edges {sideHeight} up from the BOTTOM.',
    'how.cutout.2': 'In its carrier: pivot on the centre line, {pivot} below those two marks.',
    'how.dryfit.2': 'Draw it up lightly: every shoulder tight, every mitre closed on the front.',
    'how.glue.3': 'If one is longer, slant the cramps a little along it until both agree.',
    'office.shop.places': 'Millimetres to the nearest',
    'office.shop.screens': 'Width of each station’s screen in millimetres',
    'office.shop.tools.mm': 'For jobs in millimetres, in millimetres',
    'office.units.mm': 'millimetres',
    'paper.mitre': 'mitres {sightEdge} from ends',
    'paper.card-mitre-end': 'Mitre the sight edge',
    'paper.card-foot':
      'Prove every set-up on a test piece of the same thickness. Two numbers: set the first; the one in brackets is the finished line. One number: set exactly.',
    'paper.pivot-rail':
      'pivot: {pivot} below the sight edge of the flats, on the centre line; radius {radius}',
    'paper.pivot-panel': 'pivot: {pivot} below the flats, on the centre line; radius {radius}',
    'paper.centre-line': 'centre line',
    'paper.rod-mitre': 'mitre at the sight edge, {value} from the end',
    'paper.rod-centre': 'centre, {value} from the end',
    'print.state-cancelled': 'Cancelled.',
    'print.printer-silent':
      '{printer} has not printed it after {seconds} seconds: {reason}. It was cancelled; nothing counts as printed.',
    'print.cancelled': 'Cancelled. What is out of the printer already does not count as printed.',
    'fault.length-units': 'this job is in millimetres, so no feet or inch marks; got {got}',
    'stage.groove': 'Plough the groove',
    'stage.mitre-bottom': 'Mitre the bottom end',
    'stage.mitre-top': 'Mitre the top end',
    'stage.mitre-mid-lower': 'Mitre below mid rail {k}',
    'stage.mitre-mid-upper': 'Mitre above mid rail {k}',
    'stage.mitre': 'Mitre both ends',
    'setting.centre': 'centre',
    'ui.screen-width': 'Width of this screen in millimetres',
    'ui.screen-width.note':
      'Measure the glass: it makes the numbers large enough to read from two metres (6\u00a01/2\u00a0ft).',
    'why.wall': 'the wall beside the centred groove: half of (stock {thickness} − groove {groove}) = {value}',
    'why.mortiser-fence':
      'half of (stock {thickness} − chisel {chisel}) = {value}, so that the mortise is centred',
    'why.mortise-mid-start':
      'horn {horn} + centre of the rail {centre} − half its width {half} + bead {bead} + inner setback {inner} − end play {play} = {value}',
    'why.mortise-mid-stop':
      'horn {horn} + centre of the rail {centre} + half its width {half} − bead {bead} − inner setback {inner} + end play {play} = {value}',
    'why.mitre-mid-lower':
      'horn {horn} + height as built {builtHeight} − centre of the rail {centre} + half its width {half} = {value}. It is measured from the TOP end: on a stile that is longer or shorter this cut is off by as much.',
    'why.mitre-mid-upper': 'horn {horn} + centre of the rail {centre} + half its width {half} = {value}',
    'why.tilt': 'a mitre of two equal beads: {value} degrees',
    'why.notch-from':
      'horn {horn} + centre of the rail {centre} − half its width {half} + bead {bead} = {value}',
    'why.notch-to':
      'horn {horn} + centre of the rail {centre} + half its width {half} − bead {bead} = {value}',
    'why.pivot': 'radius {radius} − rise {rise} = {value}, on the rail’s centre line',
    'why.panel-pivot': 'radius {radius} − rise {rise} = {value}, on the panel’s centre line',
  },
};
