import type { Words } from '../language.ts';

/** Cautions in British English, where they are spelled otherwise or a machine is called otherwise. */
export const cautions: Words = {
  'caution.milling.1': 'Only flat, straight stock goes over the planer and through the thicknesser.',
  'caution.milling.2':
    'Nothing shorter than the thicknesser’s minimum length: cut short parts from a long piece afterwards.',
  'caution.milling.3': 'True face and edge on the planer first; then thickness in the thicknesser.',
  'caution.mill.hands':
    'Planer: guard over the knives, push blocks in both hands, no hand over the cutter block.',
  'caution.mill.planer':
    'Thicknesser: one piece at a time; stand beside it, and never reach in while it feeds.',
  'caution.table-saw.2':
    'Never use fence and mitre gauge together on a through cut. Stop the saw before clearing offcuts.',
  'caution.mortiser.1': 'Cramp the work down and back; set the gap between bit and chisel first.',
  'caution.bench.2': 'Hold the work with vice or cramp, never by hand.',
  'caution.bench.3': 'Cramp the guide block before the chisel touches the mitre.',
  'caution.assembly.2': 'Before the glue sets: both diagonals equal, and no wind.',
  'caution.assembly.3': 'Two people lift a large door. Tighten cramps evenly; keep fingers out of the joint.',
  'caution.fitting.1': 'Support or cramp the door before it is planed or sawn.',
  'caution.fitting.2': 'Plane from the ends inwards, so that no corner breaks out.',
  'caution.arch.carrier': 'Cramp carrier and pivot before the blade runs; swing the rail without forcing it.',
  'caution.bead.arched-carrier':
    'Arched rail: never hand-feed it, whatever its length. Cramp it in a template carrier with handles.',
  'caution.slot.arched-carrier':
    'Slot cutter in an arched rail: never hand-fed, whatever its length. Template carrier, handles, cramps.',
  'caution.slot.short': 'Slot short pieces in a carrier, with cramps; never by the fingertips.',
  'caution.shoulder.arched':
    'Arched rail: only its two flats touch the gauge, and it rocks. Cramp it in its carrier, never hold it by hand.',
  'caution.shoulder.clamp':
    'Rail flat on its face, cramped to the mitre gauge: the blade runs hidden under it.',
  'caution.cheek.arched':
    'Arched rail: only its two flats touch the gauge, and it rocks. Cramp it in its carrier for every pass.',
  'caution.cheek.passes':
    'Many passes tire the hand: same grip on gauge and cramp each time, never over the blade.',
  'caution.tenon.arched':
    'Arched rail on edge: it stands on two small feet. Tall face and two cramps, never by hand.',
  'caution.tenon.edge':
    'On edge the rail tips: cramp it to a tall face on the mitre gauge, hands above the cramp.',
  'caution.mitre.arched':
    'Arched rail on its small feet: two cramps to a tall face, or it rolls into the tilted blade.',
  'caution.mitre.clamp':
    'Rail on edge, blade tilted: cramp it to a tall face. Stop the saw before clearing offcuts.',
  'caution.mitre.fence':
    'Fence far away: as a stop beside the mitre gauge it traps the loose triangle, and the blade throws it.',
  'caution.mitre-end.long':
    'Long stile: support its far end, cramp it to a tall face. Stop the saw before clearing offcuts.',
  'caution.mitre-end.lean':
    'The blade leans towards the stop block: cramp the stile, or it creeps along the tilt and binds.',
  'caution.mitre-end.fence': 'Fence far away: never a stop beside the mitre gauge on a through cut.',
  'caution.notch.clamp': 'Cramp the stile to a tall face for every pass, its far end supported.',
  'caution.notch.tired':
    'Pass after pass the hand creeps nearer: keep one grip, on the cramp, and rest between ends.',
  'caution.mortise.clamped': 'Cramps hold the stile, not hands: fingers clear before the chisel moves.',
  'caution.mortise.depth': 'Set the depth stop switched off: the chisel must never reach table or vice.',
  'caution.mortise.long': 'Support the stile’s overhanging end: it must not tip when the cramp is let go.',
  'caution.pare.vise': 'Stile in the vice, both hands behind the chisel’s cutting edge; push away from you.',
  'caution.clean.block': 'Cramp work and guide block together; both hands behind the chisel’s cutting edge.',
  'caution.clean.tip': 'The mitre’s tip is short grain: pare towards the wood, never towards your fingers.',
  'caution.haunch.saw': 'Rail in the vice; the thumb that guides the saw stays well above its teeth.',
  'caution.dryfit.fingers': 'Fingers out of every joint before a cramp is turned; tighten evenly.',
  'caution.dryfit.force':
    'Never drive a tight tenon in: the stile splits, and the cramp lets go. Ease it, try again.',
  'caution.dryfit.lift': 'Dry, only the cramps hold it: leave it lying, or turn it with two people.',
  'caution.glue.lift': 'Two people turn a large door in its cramps; fingers out of the joints.',
  'caution.glue.clamps': 'Tighten cramps evenly, a little at a time: one that slips off springs back.',
  'caution.trim.fall': 'Wedge or cramp the door so that it cannot fall before you plane or saw it.',
};
