/** What keeps a door from being made, and what a foreman would say of one that can be made; each says what to change. */
export const faultWords = {
  'fault.sight-width':
    'the stiles of {stile} leave {sightWidth} of a door {builtWidth} wide: make the stiles narrower',
  'fault.sight-height': '{sightHeight} is left between the rails: make the rails narrower, or leave some out',
  'fault.mid-rails-overlap':
    'the mid rail at {centre} overlaps the rail below it by {overlap}: move it up or make it narrower',
  'fault.groove-thickness':
    'a groove of {groove} leaves nothing of stock {thickness}: a narrower groove or thicker stock',
  'fault.bead-wall':
    'a bead of {bead} is deeper than the wall of {wall} beside the groove: a smaller bead, a narrower groove or thicker stock',
  'fault.oversize':
    'an oversize of {oversize} makes the door smaller than the opening less two reveals of {reveal}: make it at least {least}',
  'fault.oversize.side':
    'the door as built would end {missing} inside its finished line ({side}): a reveal of at least {needs} there, or an oversize of at least {least}',
  'fault.groove-mortise':
    'a groove {depth} deep reaches past bead {bead} and tenon {tenon}: a shallower groove or a longer tenon',
  'fault.tenon-width': '{width} is left for the tenon of the {part}: a wider rail or smaller setbacks',
  'fault.tenon-chisel':
    'the tenon of the {part} would be {width} wide, under the chisel of {chisel}: a wider rail or smaller setbacks',
  'fault.no-chisel':
    'no hollow chisel of the shop ({chisels}) is as narrow as the groove of {groove}: a wider groove or a narrower chisel',
  'fault.no-dado':
    'no dado of the shop ({dados}) is between half of the groove of {groove} and its width: another groove, another dado, or rout the groove',
  'fault.behind-mortise':
    'behind a mortise {depth} deep, once {trim} is trimmed, {left} would stay, and it needs {least}: a wider stile or a shorter tenon',
  'fault.cover':
    'nothing would be left outside the tenon once {trim} is trimmed: make the outer setback more than {trim}',
  'fault.end-play':
    'an end play of {endPlay} opens the mortise’s end once {trim} is trimmed: make it less than {most}',
  'fault.behind-groove':
    '{left} would be left behind the groove of the {part}: make it wider or the groove shallower',
  'fault.panel-hold':
    'a clearance of {clearance} leaves the panel no hold in a groove {depth} deep: a smaller clearance or a deeper groove',
  'fault.panel-tongue':
    'a sliding fit of {fit} leaves a panel no tongue in a groove of {groove}: a smaller fit in the shop’s tools, or a wider groove',
  'fault.arch-rise': 'an arch needs a rise of more than 0; leave the arch out for a square rail',
  'fault.arch-chord':
    'two flats of {flat} leave {chord} for the arch in a sight width of {sightWidth}: shorter flats',
  'fault.arch-too-high':
    'a rise of {rise} is more than half of the chord {chord}: at most a semicircle, so a rise of {most} or less',
  'fault.blade-height':
    'stock of {thickness} is as thick as the saw blade can be raised ({greatest}): rip the strip on the band saw, or thinner stock',
  'fault.survey-impossible':
    'these six measures make no opening: measure again; the two diagonals may be swapped',
  'fault.stile-short':
    'the {part} ends {short} below the top of the door as built, and only {trim} comes off there: {remedy}',
  'note.fillet-over-bead':
    'the fillet of {fillet} is larger than the bead of {bead}: a larger bead looks better',
  'note.bead-small': 'a bead of {bead} is under {least} and will hardly show',
  'note.groove-share':
    'the groove takes {groove} of stock {thickness}: between a quarter and a half is usual',
  'note.wall-thin': 'walls of {wall} beside the groove are under {least} and may break',
  'note.tenon-narrow':
    'the tenon of the {part}, {width} wide, is narrower than two grooves of {groove}: a wider rail or smaller setbacks',
  'note.tenon-short': 'a tenon {tenon} long is shorter than two grooves of {groove}',
  'note.chisel-small':
    'the chisel of {chisel} is under half of the groove of {groove}: many plunges side by side',
  'note.dado-as-wide':
    'no dado of the shop is narrower than the groove of {groove} and at least half of it: the second pass would only widen the groove; a narrower dado lets the fence center it',
  'note.groove-eats-tenon':
    'on the {part} the groove takes {eaten} of the tenon’s inner edge: its true width is {width}',
  'note.tenon-wide':
    'the tenon of the {part}, {width} wide, is wider than {most}: split it by hand into two across the rail’s width, cut the gap between them back to the haunch’s length, and leave the stile whole at the gap',
  'note.behind-mortise': 'only {left} stays behind a mortise {depth} deep: {least} is safer',
  'note.cover': 'only {cover} covers the tenon’s outer edge once trimmed: {least} is safer',
  'note.end-splits':
    'only {left} from the stile’s end to the mortise: it may split; a longer horn helps ({least} in all)',
  'note.no-end-play': 'no end play: the tenon must be fitted to the mortise’s length',
  'note.no-horn': 'no horn: the stile’s end may split when it is mortised',
  'note.no-clearance': 'no clearance below the tenon: glue may keep the joint open',
  'note.haunch-tight':
    'no haunch clearance: a haunch a hair too long holds the shoulder open; {usual} is usual',
  'note.behind-groove': 'only {left} stays behind the groove of the {part}: {least} is safer',
  'note.panel-hold-small': 'the panel goes only {hold} into its groove: {least} is safer',
  'note.panel-hold-clearance':
    'the panel goes only {hold} into its groove, no more than its clearance of {clearance}: it may fall out on one side',
  'note.panel-no-clearance': 'no clearance: the panel cannot swell',
  'note.panel-swells':
    'from {atBuild} percent moisture at glue-up to {high} percent the panel swells {change}, and {room} is free: {remedy}',
  'note.panel-shrinks':
    'from {atBuild} percent moisture at glue-up to {low} percent the panel shrinks {change}; floating in its groove it may lose {room}, pinned at the center of its ends {pinned}: {remedy}',
  'note.arch-flat':
    'a flat of {flat} is no longer than the bead of {bead}: the arch begins in the joint; make the flat longer',
  'note.arch-short-grain': 'a rise of {rise} on a chord of {chord} leaves short grain at the springing',
  'note.bearing':
    'a bearing of radius {bearing} does not follow an arch of radius {radius}: use a smaller bearing',
  'note.drum': 'no drum of the shop fits an arch of radius {radius}: sand it by hand or with a smaller drum',
  'note.lag': 'the cut lags {lag}, past the shoulder line at {shoulderLine}: rip this strip on the band saw',
  'note.panel-proud': 'a panel of {thickness} stands proud of the back by {proud}',
  'note.panel-thin':
    'a panel of {thickness} is thinner than its tongue of {tongue}: it will rattle in the groove',
  'note.band-narrow':
    'a band of {band} is narrower than the groove is deep ({depth}): the panel will not seat fully',
  'note.does-not-cover':
    'as built the door does not cover the opening at {where}, by {missing}: an oversize of {width} in width and {height} in height would',
  'note.stile-short':
    'the {part} ends {short} below the top of the door as built; {trim} comes off there, so it still does: {remedy}',
  'note.stile-end-splits':
    'on the {part} only {left} is left from its top end to the mortise: it may split ({least} is safer)',
  'note.rail-stop':
    'the {part} came out {length}: with the stop block at {stop} for both ends its shoulders stay {shoulderToShoulder} apart; {room} stays free below its tenons',
  'note.rail-long':
    'the {part} is {by} too long: its tenons would meet the mortises’ floors with its shoulders {shoulderToShoulder} apart; saw it to {planned}',
  'note.rail-short':
    'the {part} is {by} too short: its tenons would hold too little, or its shoulders be {by} nearer than {shoulderToShoulder}; cut a new one {planned} long',
  'note.grooves-differ':
    'the groove of the {part} is {wide}, that of the other stile {narrow}: tenons are cut to {narrow} and have {play} of room there; glue veneer to those cheeks',
  'note.stile-no-chisel':
    'no hollow chisel of the shop is as narrow as the groove of the {part}, {groove}: widen it to {planned}',
  'note.panel-too-wide':
    'the {part} is {size} wide, and its grooves are {room} apart at their floors: it does not go in; plane it to {planned}',
  'note.panel-too-long':
    'the {part} is {size} long, and its grooves are {room} apart at their floors: it does not go in; saw it to {planned}',
  'note.panel-too-narrow':
    'the {part} is {size} wide: it does not reach its grooves on both sides; make a new one {planned} wide',
  'note.panel-too-short':
    'the {part} is {size} long: it does not reach its grooves at both ends; make a new one {planned} long',
  'note.closure':
    'one of the six measures of the opening does not fit the others, by {closure}: measure again',
  'note.short-piece':
    '{part} is {length} long, under {least}: never hand-feed it; use a carrier (a sled or jig that holds it)',
} as const;

/** What stands in such a sentence for a length that is left, where none is. */
export const leftWords = {
  'left.nothing': 'nothing',
  'left.short': 'nothing ({short} short)',
} as const;
