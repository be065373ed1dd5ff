/** What can hurt in each cut at the table saw; of the stopped rip also at a band saw. */
export const tableSawCautions = {
  'caution.groove.guard':
    'Guard over the blade, two featherboards. Splitter off for this cut only: on again right after it.',
  'caution.groove.hidden':
    'The blade cuts hidden in the wood: no hand over it or behind it; push block to the very end.',
  'caution.groove.lawful':
    'Where dado heads are not lawful, do not groove here: rout it with a slot cutter, the shop’s other way.',
  'caution.groove.tips':
    'On edge it tips: a tall fence behind it, a featherboard high and one low against it.',
  'caution.groove.dado': 'Change the dado set unplugged; turn it once by hand past insert and guard.',
  'caution.shoulder.arched':
    'Arched rail: only its two flats touch the gauge, and it rocks. Clamp it in its carrier, never hold it by hand.',
  'caution.shoulder.clamp':
    'Rail flat on its face, clamped to the miter gauge: the blade runs hidden under it.',
  'caution.shoulder.stop':
    'Stop block on the gauge, not the fence: a piece caught between fence and blade is thrown.',
  'caution.shoulder.turn': 'Stop the saw before you turn the rail over or change ends; guard over the cut.',
  'caution.cheek.arched':
    'Arched rail: only its two flats touch the gauge, and it rocks. Clamp it in its carrier for every pass.',
  'caution.cheek.bits': 'Thin slices come loose beside the blade: stop the saw before you brush them off.',
  'caution.cheek.flat':
    'Keep the rail flat, a hold-down block over it: where it lifts, the blade digs in and throws it.',
  'caution.cheek.passes':
    'Many passes tire the hand: same grip on gauge and clamp each time, never over the blade.',
  'caution.tenon.arched':
    'Arched rail on edge: it stands on two small feet. Tall face and two clamps, never by hand.',
  'caution.tenon.edge':
    'On edge the rail tips: clamp it to a tall face on the miter gauge, hands above the clamp.',
  'caution.tenon.set':
    'Another height or stop for the other edge: switch off and wait until the blade has stopped.',
  'caution.tenon.bits': 'Bits between stop block and blade fly: brush them off with the saw stopped.',
  'caution.tenon.guard': 'Guard over the cut; never reach across the blade to the rail’s far end.',
  'caution.mitre.arched':
    'Arched rail on its small feet: two clamps to a tall face, or it rolls into the tilted blade.',
  'caution.mitre.clamp':
    'Rail on edge, blade tilted: clamp it to a tall face. Stop the saw before clearing offcuts.',
  'caution.mitre.fence':
    'Fence far away: as a stop beside the miter gauge it traps the loose triangle, and the blade throws it.',
  'caution.mitre.clear': 'Unplug to tilt; turn the blade by hand: it must clear insert, guard and gauge.',
  'caution.mitre.wait': 'Loose triangles lie beside the blade: leave them until it has stopped.',
  'caution.mitre-end.long':
    'Long stile: support its far end, clamp it to a tall face. Stop the saw before clearing offcuts.',
  'caution.mitre-end.lean':
    'The blade leans toward the stop block: clamp the stile, or it creeps along the tilt and binds.',
  'caution.mitre-end.fence': 'Fence far away: never a stop beside the miter gauge on a through cut.',
  'caution.mitre-end.clear':
    'Unplug to tilt; turn the blade by hand: it must clear insert, guard and the tall face.',
  'caution.notch.bits':
    'Many passes, many loose bits: stop the saw before you touch one; never flick it away.',
  'caution.notch.square': 'Blade square again and down to its height before the first pass; guard over it.',
  'caution.notch.clamp': 'Clamp the stile to a tall face for every pass, its far end supported.',
  'caution.notch.tired':
    'Pass after pass the hand creeps nearer: keep one grip, on the clamp, and rest between ends.',
  'caution.strip.stop':
    'Stopped rip: feed to the stop block, switch off, wait until the blade has stopped. Never pull the work back while the blade is turning.',
  'caution.strip.bare':
    '{bladeHeight} of blade is bare until the stile covers it, and most guards are off for this cut: no hand in its line.',
  'caution.strip.beside':
    'Stand beside the blade’s line, never behind the stile: it can be thrown straight back.',
  'caution.strip.switch':
    'Have the switch in reach of knee or foot: both hands stay on the stile until the blade has stopped.',
  'caution.strip.hold':
    'Hold-down over the stile, featherboard in front of the blade, none beside it: there it pinches.',
  'caution.strip.band-hands':
    'Push stick, and hands beside the cut, never in the blade’s path; guard just above the stile.',
  'caution.strip.band-stop':
    'At the stop block switch off and wait until the blade has stopped; then draw the stile straight out.',
  'caution.strip.band-drift':
    'A blade that wanders pulls the stile off the fence: set the fence to its drift on scrap.',
  'caution.strip.band-support':
    'Support the stile’s far end at table height: where it sinks, the cut pinches the blade.',
} as const;
