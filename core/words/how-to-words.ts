/**
 * How the work of a stage goes, line by line: what is set, on what it is proved, which end and face come first, how the
 * piece is turned, what stays for the chisel. Common practice, no source, where no table of the joint says it. A figure
 * is a setting, `…Set` where it is set beside its line, `stage_setting` one of another stage of the same part.
 */
export const howToWords = {
  'how.mill.stile.1': 'Wood: straight grain, no knot where a mortise comes.',
  'how.mill.rail.1': 'Wood: straight grain, no knot where its tenons come.',
  'how.mill.arched.1': 'Wood: grain that sweeps with the arch, no knot where its tenons come.',
  'how.mill.panel.1': 'Wood: grain up and down, the better face the FRONT.',
  'how.mill.panel-arched.1': 'Wood: grain up and down, its figure rising into the arch.',
  'how.mill.1': 'Flatten one face and square one edge to it.',
  'how.mill.2': 'Thickness {thickness}, width {width}: measure both on a test piece first.',
  'how.mill.3': 'Square one end, and cut to {length} from it.',
  'how.mill.mark-stile.1':
    'Mark FRONT, TOP and sight edge: seen from the front, a left stile’s at its right, a right stile’s at its left.',
  'how.mill.mark-rail.1':
    'Mark FRONT and sight edge: the upper edge of a bottom rail, the lower edge of a top rail.',
  'how.mill.mark-mid.1': 'Mark FRONT and the upper edge; both edges are sight edges.',
  'how.mill.mark-panel.1': 'Mark FRONT and TOP.',
  'how.arch.1':
    'Mark the center line {centre} from the end, and on the sight edge each springing, {springing} from its end.',
  'how.arch.2': 'In its carrier: pivot on the center line, {pivot} below the sight edge of the flats.',
  'how.arch.3': 'From the pivot to the far side of the blade: {radiusSet}. The line is at {radius}.',
  'how.arch.4':
    'Prove it on a test piece: rise {rise} over a chord of {chord}, the cut {share} below the line.',
  'how.arch.5': 'Saw from one springing to the other; the flats stay. The last {share} stays for the drum.',
  'how.smooth.1': 'Mount the {drum} drum.',
  'how.smooth.2':
    'See which way your drum turns, and feed the rail only against that, even where a drawing shows it otherwise.',
  'how.smooth.3': 'Prove it on the sawn test piece: the sanded edge is square to the face.',
  'how.smooth.4':
    'Sand from springing to springing, down to the line of radius {radius}; leave the flats alone.',
  'how.smooth.5': 'Hold the template to the arch: no light between them.',
  'how.bead.set.1': 'Cutter for a {bead} bead, its top {cutterHeight} above the table.',
  'how.bead.set.2':
    'Prove it on a test piece of the same thickness, front down: the bead lies {fillet} below the front.',
  'how.bead.1': 'FRONT down, sight edge to the cutter, from end to end.',
  'how.bead.mid.1': 'FRONT down, one edge to the cutter, from end to end.',
  'how.bead.mid.2': 'Turn it end for end, FRONT still down: now the other edge.',
  'how.bead.arched.1':
    'In its carrier, FRONT down, sight edge to the cutter: flat, arch, flat without stopping, the bearing on the edge.',
  'how.bead.arched.2':
    'Not in one pass: begin with the cutter low, two or three light passes, the last at {cutterHeight}.',
  'how.groove.set.1': 'Mount the {blade} dado.',
  'how.groove.set.2': 'Dado {depth} high, fence {fence} from it.',
  'how.groove.set.3':
    'Prove it on a test piece of the same thickness, both passes: groove {width} wide, a wall of {fence} at each side.',
  'how.groove.1': 'First pass: sight edge down, FRONT to the fence.',
  'how.groove.2': 'Second pass, same setting: turn it end for end, sight edge still down, BACK to the fence.',
  'how.groove.mid.1': 'Both edges, one after the other. First pass: that edge down, FRONT to the fence.',
  'how.groove.mid.2': 'Second pass, same setting: turn it end for end, same edge down, BACK to the fence.',
  'how.slot.set.1':
    'Slot cutter {width} wide, its underside {cutterHeight} above the table, {depth} deep by its bearing.',
  'how.slot.set.2':
    'Prove it on a test piece of the same thickness, front down: {cutterHeight} stays in front of the groove.',
  'how.slot.set.3':
    'Not in one pass: two or three, at first with a larger bearing or the fence set back, the full depth last.',
  'how.slot.1': 'FRONT down only, sight edge to the cutter: the bearing runs on the back wall.',
  'how.slot.mid.1':
    'Both edges, FRONT down only: the bearing runs on the back wall. Turn it end for end between them.',
  'how.slot.arched.1':
    'In its carrier, FRONT down only: flat, arch, flat without stopping, the bearing on the back wall.',
  'how.mortise.1': 'Chisel {chisel}, fence {fence} from it.',
  'how.mortise.2':
    'Depth stop: {depthFromEdge} below the sight edge, {depthFromGroove} below the groove’s floor.',
  'how.mortise.3':
    'Prove the fence: plunge a test piece, turn it end for end, same edge up, plunge in the same hole: it must take nothing.',
  'how.mortise.4':
    'Sight edge up, front against the fence at every place: slide the stile along, never turn it.',
  'how.mortise.5': '{part}, {end} end: against the {endStop} stop block.',
  'how.mortise.6': '{place}: cut from {start} to {stop}, measured from the {end} end; {plunges} plunges.',
  'how.pare.1': 'Pare both walls alike until the mortise is {width} wide, as the groove is.',
  'how.pare.2': 'Leave the ends of the mortise. Try it with the proved test tenon: it goes in by hand.',
  'how.mitre.set.1':
    'Blade at {tilt}, {height} high. Stop block to the far side of the blade, at the table: {sightEdgeSet}.',
  'how.mitre.set.2':
    'Prove it on a test piece of the same thickness: the cut is {height} deep, at {tilt} to the edge.',
  'how.mitre.line.1':
    'Mark the line on the sight edge, {sightEdge} from the {end} end: the cut stays {share} nearer that end, for the chisel.',
  'how.mitre.end.1':
    'Sight edge down, {end} end against the stop block; the blade leans toward the stop block.',
  'how.mitre.end.2':
    'One cut at this end alone: do not turn the stile end for end. The other end is set otherwise.',
  'how.mitre.lower.1':
    'Below mid rail {k}, yet from the TOP end: measure the stile first. If it is not {partLength} long, this cut is off by as much.',
  'how.mitre.upper.1': 'Above mid rail {k}, measured from the BOTTOM end.',
  'how.mitre.mid-end.1':
    'Sight edge down, {end} end against the stop block; the blade leans toward the stop block.',
  'how.mitre.mid-end.2': 'One cut at this edge of the rail alone: its other edge is set from the other end.',
  'how.mitre.1': 'Sight edge down, one end against the stop block; the blade leans toward the stop block.',
  'how.mitre.2': 'Turn it end for end, sight edge still down: the other end.',
  'how.mitre.mid.1': 'Both edges: now the other edge down, both ends again.',
  'how.mitre.pare.1': 'The line is at {sightEdge}: the last {share} stays for the chisel.',
  'how.notch.set.1':
    'Blade square. Prove it on a test piece of the same thickness: the cut is {height} deep.',
  'how.notch.set.2': 'Sight edge down, {end} end to the stop block.',
  'how.notch.1':
    'First cut: stop block to the near side of the blade {from}. Last cut: to its far side {to}.',
  'how.notch.2': 'Crosscuts side by side between them, none past the lines: the notch is {length} long.',
  'how.notch.end.1': 'First the cut at the line: stop block to the far side of the blade {to}.',
  'how.notch.end.2': 'Then crosscuts side by side out to the {end} end, none past the line.',
  'how.notch.pare.1': 'The ridges between the cuts stay for the chisel.',
  'how.strip.1':
    'Fence {fenceSet} from the blade, at its right; blade {bladeHeight} high. A test piece comes out {fenceSet} wide.',
  'how.strip.2':
    'Draw a line on the fence at the blade’s front, at table level: {reach} on your side of the arbor.',
  'how.strip.3':
    'Mark the stile {run} from its {end} end. Lay it with its {face} up, that end first, outer edge to the fence.',
  'how.strip.4':
    'Clamp a stop block {runSet} past the line, on the far side. The end stops there, the mark {share} short of the line.',
  'how.strip.5':
    'Feed to the stop block. Switch off, wait until the blade has stopped, then lift the stile out.',
  'how.strip.6':
    'On the top face the last {lag} is still uncut: pare it, and the last {share} all along, to the line.',
  'how.strip.band.1':
    'Fence {fenceSet} from the blade, at its right. A test piece comes out {fenceSet} wide.',
  'how.strip.band.2':
    'Mark the stile {run} from its {end} end. Lay it with its {face} up, that end first, outer edge to the fence.',
  'how.strip.band.3':
    'Clamp a stop block {runSet} past the teeth, on the far side: the end stops there, short of the mark.',
  'how.strip.band.4':
    'Feed to the stop block. Switch off, wait until the blade has stopped, then draw the stile back.',
  'how.strip.band.5': 'At the end of the cut and all along it the last {share} stays for the chisel.',
  'how.clean.1':
    'Set the 45° guide block to a miter’s line and pare until the chisel lies flat on the block.',
  'how.clean.stile.1': 'Lines on the sight edge, from the BOTTOM end: {bottomLines}.',
  'how.clean.stile.2': 'Lines on the sight edge, from the TOP end: {topLines}.',
  'how.clean.stile.3': 'Where the bead is cut away pare the edge flat, {bead_bead} back from the sight edge.',
  'how.clean.rail.1': 'At each end the line is {mitre_sightEdge} from the end, on the sight edge.',
  'how.clean.mid.1': 'At each end of both edges the line is {mitre_sightEdge} from the end.',
  'how.clean.rail-shoulder.1': 'Take nothing off the shoulders: they were sawn to the line.',
  'how.shoulder.set.1': 'Blade square, {height} high. Stop block to the far side of the blade: {stop}.',
  'how.shoulder.set.2':
    'Prove it on a test piece of the same thickness: the far side of the cut is {stop} from the end.',
  'how.shoulder.1':
    'One face down, one end against the stop block. Same face down, turn it end for end: the other end.',
  'how.shoulder.2': 'Turn the other face down: both ends again. Never the edges.',
  'how.shoulder.3': 'This is cut to the line: nothing stays for the chisel.',
  'how.shoulder.arched.1':
    'The arched edge touches the gauge with its two flats alone: hold it in its carrier.',
  'how.cheek.set.1':
    'Blade {height} high, stop block {shoulder_stop} from its far side: both as for the shoulders.',
  'how.cheek.set.2':
    'Prove it on a test piece of the same thickness, both faces: a tenon {thickness} thick stays.',
  'how.cheek.set.3': 'A hand-push fit: the blade up to {hair} higher, never lower; over both faces {push}.',
  'how.cheek.1':
    'One face down: crosscuts side by side from the shoulder out to the end, none past it; the ridges stay for the chisel.',
  'how.cheek.2':
    'Same face down, turn it end for end: the other end. Then the other face down: both ends again.',
  'how.cheek.pare.1': 'Then plane the tenon to {pareTo} thick, as wide as its mortises.',
  'how.tenon.inner.1':
    'Inner edge: sight edge down, blade {innerHeight} high, stop block {innerStop} from its far side.',
  'how.tenon.outer.1':
    'Outer edge: outer edge down, blade {outerHeight} high, stop block {outerStop} from its far side.',
  'how.tenon.outer.2': 'The haunch stays there, {haunch_length} long: no cut past this stop block.',
  'how.tenon.1':
    'At each setting crosscuts side by side, out to the end. Same edge down, turn it end for end: the other end.',
  'how.tenon.mid.1':
    'Both edges at one setting, each down in turn: blade {innerHeight} high, stop block {innerStop} from its far side.',
  'how.tenon.mid-ends.1':
    'Crosscuts side by side, out to the end. Same edge down, turn it end for end: the other end.',
  'how.flats.1': 'Sight edge down the rail rests on its two flats alone: hold it in its carrier.',
  'how.tenon.test.1':
    'Prove it on a test piece as wide as the rail: the tenon is {width} wide and enters its mortise.',
  'how.tenon.wide.1':
    'A wide tenon: split it into two with a haunch between, if the stile is not mortised there yet; else ease its edges.',
  'how.haunch.1':
    'At the outer edge, beside the tenon: {length} long from the shoulder, {height} across to that edge.',
  'how.haunch.2': 'Square its end and the corner at the tenon. A haunch too long holds the shoulder open.',
  'how.haunch.pare.1': 'Pare the back of the haunch to {pareTo} thick, as wide as its groove.',
  'how.cutout.1':
    'Mark the center line {centre} from an edge, and both edges {sideHeight} up from the BOTTOM.',
  'how.cutout.2': 'In its carrier: pivot on the center line, {pivot} below those two marks.',
  'how.cutout.3': 'From the pivot to the near side of the blade: {radiusSet}. The line is at {radius}.',
  'how.cutout.4': 'Prove it on a test piece: the cut runs {share} above the line.',
  'how.cutout.5':
    'Saw the flats straight in at the marks, {flat} from each edge; then the arch about the pivot.',
  'how.cutout.6': 'The last {share} of the arch is sanded off.',
  'how.raise.1':
    'Cutter with a band {band} wide. Not in one run: begin low, three or more runs, the last {depth} above the table.',
  'how.raise.2':
    'Prove it on a test piece of the same thickness, back down: the tongue that stays slides in the groove.',
  'how.raise.3': 'BACK down at every edge: first across the grain, BOTTOM and TOP, then along both sides.',
  'how.raise.4': 'The last run all round at {depth}: the tongue is {tongue}.',
  'how.raise.arched.1': 'The arched TOP runs on the cutter’s bearing, without the fence.',
  'how.dryfit.1':
    'Into one stile: the rails from the bottom up, the panels between them. Then the other stile.',
  'how.dryfit.2': 'Draw it up lightly: every shoulder tight, every miter closed on the front.',
  'how.dryfit.3':
    'If a shoulder stays open, find what holds it (haunch, panel, mortise floor) and pare that.',
  'how.glue.1': 'Put it together in the order of the dry fit, glue on tenons and in mortises.',
  'how.glue.2':
    'Measure both diagonals from corner to corner of the door, horns not counted: {diagonal} each.',
  'how.glue.3': 'If one is longer, slant the clamps a little along it until both agree.',
  'how.trim.1': 'First saw off the horns: {horn} at each end.',
  'how.trim.2': 'Then trim the edges by what comes off each.',
} as const;
