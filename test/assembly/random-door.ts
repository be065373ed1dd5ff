import fc from 'fast-check';

const sixteenths = (low: number, high: number) => fc.integer({ min: low * 16, max: high * 16 });
const inSixteenths = (n: number) => `${n}/16`;

/** What a door stays off its opening on one side. */
const gap = fc.constantFrom('1/16', '3/32', '1/8');

/** An arch of any rise between its flats; or an exact semicircle, whose rise is half of what the flats leave. */
const arch = fc.oneof(
  fc.record({ rise: sixteenths(0.5, 3), flat: sixteenths(0.25, 2) }),
  fc.record({ rise: fc.constant('semicircle' as const), flat: sixteenths(0.25, 2) }),
);

/** Both ways of each cut that has two. */
export const ways = fc.record({
  strip: fc.constantFrom('notch', 'rip'),
  groove: fc.constantFrom('saw', 'router'),
});

/**
 * Doors of many sizes, square and arched up to the exact semicircle, with and without bead, horns and mid rails, with
 * grooves deeper and shallower than the bead, haunches to the groove's floor and short of it; every field is there. Most of them can be made.
 */
export const randomDoor = fc
  .record({
    width: sixteenths(11, 30),
    height: sixteenths(26, 70),
    oversize: fc.constantFrom('0', '1/8', '1/4'),
    reveal: fc.oneof(
      { weight: 3, arbitrary: fc.constantFrom('1/16', '1/8') },
      fc.record({ left: gap, right: gap, bottom: gap, top: gap }),
    ),
    stile: sixteenths(2, 3.5),
    bottom: sixteenths(2, 4),
    top: sixteenths(1.5, 3),
    bead: fc.constantFrom('0', '1/8', '3/16', '1/4'),
    thickness: fc.constantFrom('3/4', '7/8', '1'),
    groove: fc.constantFrom('1/4', '5/16'),
    depth: fc.constantFrom('3/16', '1/4', '5/16', '3/8', '1/2'),
    tenon: fc.constantFrom('3/4', '1', '1 1/8'),
    outer: fc.constantFrom('1/4', '3/8', '1/2'),
    inner: fc.constantFrom('0', '1/8', '1/4'),
    haunchClearance: fc.constantFrom('0', '1/64', '1/32', '1/16'),
    clearance: fc.constantFrom('0', '1/16', '1/8'),
    endPlay: fc.constantFrom('0', '1/32', '1/16'),
    horn: fc.constantFrom('0', '1/2', '3/4'),
    panel: fc.constantFrom('1/4', '3/8', '1/2'),
    arch: fc.option(arch, { nil: null }),
    mids: fc.uniqueArray(fc.constantFrom('8', '13', '18'), { maxLength: 3 }),
  })
  .map((door) => ({
    mark: 'A',
    opening: { width: inSixteenths(door.width), height: inSixteenths(door.height) },
    oversize: { width: door.oversize, height: door.oversize },
    reveal: door.reveal,
    thickness: door.thickness,
    stile: { width: inSixteenths(door.stile) },
    bottomRail: { width: inSixteenths(door.bottom) },
    topRail: { width: inSixteenths(door.top) },
    bead: door.bead,
    groove: { width: door.groove, depth: door.depth },
    tenon: {
      length: door.tenon,
      outerSetback: door.outer,
      innerSetback: door.inner,
      haunchClearance: door.haunchClearance,
    },
    mortise: { clearance: door.clearance, endPlay: door.endPlay },
    horn: door.horn,
    panel: { thickness: door.panel, clearance: '1/16' },
    arch:
      door.arch === null
        ? null
        : {
            rise: riseOf(door.arch, door.width - 2 * door.stile, door.oversize),
            flat: inSixteenths(door.arch.flat),
          },
    midRails: door.mids.map((centre) => ({ width: '2 1/2', centre })),
  }));

/** A rise as the job file has it, in thirty-seconds; never under one of them. */
function riseOf(
  { rise, flat }: { readonly rise: number | 'semicircle'; readonly flat: number },
  sight: number,
  oversize: string,
): string {
  if (rise !== 'semicircle') return inSixteenths(rise);
  const more = { '0': 0, '1/8': 2, '1/4': 4 }[oversize] ?? 0;
  return `${Math.max(1, sight + more - 2 * flat)}/32`;
}
