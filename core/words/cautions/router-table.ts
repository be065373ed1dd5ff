/** What can hurt where beads and grooves are routed and panels raised. */
export const routerTableCautions = {
  'caution.bead.arched-carrier':
    'Arched rail: never hand-feed it, whatever its length. Clamp it in a template carrier with handles.',
  'caution.bead.arched-passes':
    'Two or three light passes: a deep first cut snatches the rail and pulls the hands after it.',
  'caution.bead.arched-grain':
    'At both springings the grain runs out short and can tear: slow and light there, both hands on the handles.',
  'caution.bead.arched-start':
    'Start with the template against the pin, then ease it onto the bearing; feed against the cutter’s rotation.',
  'caution.bead.feed': 'Feed against the cutter’s rotation; never trap the work between cutter and fence.',
  'caution.bead.feather':
    'Featherboards hold it to fence and table; a push block moves it, fingers stay off the edge.',
  'caution.bead.ends': 'The work jumps at the start and the end of a cut: no hand near the cutter there.',
  'caution.bead.short': 'Stick short pieces in a carrier, or two in one length, cut apart afterwards.',
  'caution.slot.arched-carrier':
    'Slot cutter in an arched rail: never hand-fed, whatever its length. Template carrier, handles, clamps.',
  'caution.slot.arched-passes':
    'Reach the depth in two or three passes, a larger bearing first: a slot cutter grabs more wood than it shows.',
  'caution.slot.arched-grain':
    'Short grain at both springings: the thin wall of the slot breaks, and the rail is thrown. Go slowly there.',
  'caution.slot.arched-start':
    'Template against the pin first; feed against the cutter’s rotation, never with it.',
  'caution.slot.hidden':
    'The cutter runs hidden in the edge: keep fingers off that edge, most of all where it comes out.',
  'caution.slot.feather':
    'Featherboards hold it to fence and table; feed against the cutter’s rotation with a push block.',
  'caution.slot.passes': 'Reach the depth in two or three passes: set the fence back a little each time.',
  'caution.slot.short': 'Slot short pieces in a carrier, with clamps; never by the fingertips.',
  'caution.raise.arched':
    'Arched end: no fence guides it. Template carrier with handles, against bearing and pin, light passes.',
  'caution.raise.trap':
    'Never trap the panel between cutter and fence: the cutter runs inside the fence, guard over it.',
  'caution.raise.speed':
    'Large cutter, low speed: set it by its diameter, never above the maximum marked on the cutter.',
  'caution.raise.depth': 'Take the depth in three or more passes, the last one the lightest.',
  'caution.raise.ends':
    'End grain first, BOTTOM and TOP, a backing block behind the corner; then both sides.',
  'caution.raise.hands': 'Push blocks flat on the panel; no finger over its edge or under its corner.',
} as const;
