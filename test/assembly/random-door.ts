import fc from 'fast-check';

const sixteenths = (low: number, high: number) =>
  fc.integer({ min: low * 16, max: high * 16 }).map((n) => `${n}/16`);

/** Doors of many sizes, square and arched, with and without bead, horns and mid rails; most of them can be made. */
export const randomDoor = fc
  .record({
    width: sixteenths(11, 30),
    height: sixteenths(26, 70),
    stile: sixteenths(2, 3.5),
    bottom: sixteenths(2, 4),
    top: sixteenths(1.5, 3),
    bead: fc.constantFrom('0', '1/8', '3/16', '1/4'),
    thickness: fc.constantFrom('3/4', '7/8', '1'),
    depth: fc.constantFrom('1/4', '5/16', '3/8', '1/2'),
    tenon: fc.constantFrom('3/4', '1', '1 1/8'),
    outer: fc.constantFrom('1/4', '3/8', '1/2'),
    inner: fc.constantFrom('0', '1/8', '1/4'),
    clearance: fc.constantFrom('0', '1/16', '1/8'),
    endPlay: fc.constantFrom('0', '1/32', '1/16'),
    horn: fc.constantFrom('0', '1/2', '3/4'),
    arch: fc.option(fc.record({ rise: sixteenths(0.5, 3), flat: sixteenths(0.25, 2) }), { nil: null }),
    mids: fc.uniqueArray(fc.constantFrom('8', '13', '18'), { maxLength: 2 }),
  })
  .map((door) => ({
    mark: 'A',
    opening: { width: door.width, height: door.height },
    thickness: door.thickness,
    stile: { width: door.stile },
    bottomRail: { width: door.bottom },
    topRail: { width: door.top },
    bead: door.bead,
    groove: { width: '1/4', depth: door.depth },
    tenon: { length: door.tenon, outerSetback: door.outer, innerSetback: door.inner },
    mortise: { clearance: door.clearance, endPlay: door.endPlay },
    horn: door.horn,
    arch: door.arch,
    midRails: door.mids.map((centre) => ({ width: '2 1/2', centre })),
  }));
