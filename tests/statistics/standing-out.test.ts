/** One of many places against the others, against SciPy and in what must hold whatever the numbers. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { amongOthers, fisherExact, holmAdjusted, type Place } from "../../src/statistics/index.ts";
import { runs } from "../random.ts";

type Counts = readonly [affected: number, examined: number, effect: number, clusters: number];
const placed = ([affected, examined, effect, clusters]: Counts): Place => ({
  affected,
  examined,
  effect,
  clusters,
});

/**
 * Worked out anew in Python: stats.fisher_exact and stats.t.sf of SciPy 1.17.1, DerSimonian & Laird and Holm written from their
 * formulas. Together, spread, drawn, and the larger p after Holm.
 */
const known: readonly [string, readonly Counts[], readonly (readonly number[])[]][] = [
  [
    "singly",
    [
      [4, 30, 1, 30],
      [24, 30, 1, 30],
      [6, 30, 1, 30],
      [3, 20, 1, 20],
      [2, 25, 1, 25],
      [5, 30, 1, 30],
      [0, 12, 1, 12],
      [9, 30, 1, 30],
    ],
    [
      [0.1155181177335611, 0.721111995269875, 0.1414745438060021, 1.0],
      [1.0993364530858473e-11, 0.0010979232485906433, 0.7425584061470716, 0.008783385988725146],
      [0.506609286022716, 0.9551338891825708, 0.20156923223285567, 1.0],
      [0.41777532608053825, 0.7983326285393529, 0.1589145918191834, 1.0],
      [0.029672040230393385, 0.5226204744962903, 0.09422963625527787, 1.0],
      [0.26530609513448894, 0.8418087848064706, 0.17166876268889222, 1.0],
      [0.03923976366378038, 0.29051592241951335, 0.031399089677190566, 1.0],
      [0.6510488956556006, 0.7428536467556022, 0.2902994595268037, 1.0],
    ],
  ],
  [
    "pens",
    [
      [12, 30, 2.5, 6],
      [20, 40, 1.4, 8],
      [3, 25, 1, 25],
      [30, 36, 1.8, 9],
      [0, 20, 4, 5],
      [8, 30, 1.2, 10],
    ],
    [
      [0.9803849433851183, 0.8669326800722398, 0.38920419920280275, 1.0],
      [0.3352013828324341, 0.6447234883104324, 0.4852785755879103, 1.0],
      [0.03395079385789787, 0.3710459430527274, 0.14000803936459533, 1.0],
      [0.0010495285620763064, 0.06447018951353865, 0.7794443675518637, 0.3868211370812319],
      [0.12306729075747731, 0.20171947848043342, 0.08402398624514387, 1.0],
      [0.2550264863613172, 0.8097881559094223, 0.27489256222945885, 1.0],
    ],
  ],
];

describe("one of many places", () => {
  it.each(known)("is what SciPy makes of it: %s", (_, counts, wanted) => {
    const found = amongOthers(counts.map(placed));
    const adjusted = holmAdjusted(found.map(({ p }) => p ?? 1));
    for (const [at, row] of found.entries()) {
      const [together = 0, spread = 0, drawn = 0, holm = 0] = wanted[at] ?? [];
      for (const [got, should] of [
        [row.pTogether, together],
        [row.pSpread ?? -1, spread],
        [row.drawn, drawn],
        [adjusted[at] ?? -1, holm],
      ] as const)
        expect(Math.abs(got - should)).toBeLessThan(1e-9 * Math.max(should, 1e-12) + 1e-15);
      expect(row.p).toBe(Math.max(row.pTogether, row.pSpread ?? 0));
    }
  });

  it("has no spread of the others with one other, and then is Fisher's test alone", () => {
    const [one] = amongOthers([placed([7, 10, 1, 10]), placed([2, 10, 1, 10])]);
    expect([one?.pSpread, one?.p, one?.above]).toEqual([null, null, true]);
    expect(one?.pTogether).toBe(fisherExact({ x1: 7, n1: 10, x2: 2, n2: 10 }).p);
  });

  it("is never marked where all have the same share, and is drawn to where it is", () => {
    for (const row of amongOthers(Array.from({ length: 6 }, () => placed([6, 20, 1, 20])))) {
      expect(row.p).toBe(1);
      expect(row.drawn).toBeCloseTo(0.3, 9);
    }
  });

  const place = fc
    .record({ examined: fc.integer({ min: 2, max: 60 }), share: fc.double({ min: 0, max: 1, noNaN: true }) })
    .map(({ examined, share }) => placed([Math.round(share * examined), examined, 1, examined]));

  it("does not depend on the order, nor on which answer is called affected", () => {
    fc.assert(
      fc.property(fc.array(place, { minLength: 3, maxLength: 12 }), (places) => {
        const found = amongOthers(places);
        const back = amongOthers(places.toReversed()).toReversed();
        const mirrored = amongOthers(
          places.map((one) => ({ ...one, affected: one.examined - one.affected })),
        );
        for (const [at, { p, drawn }] of found.entries()) {
          expect(back[at]?.p).toBeCloseTo(p ?? 0, 9);
          expect(mirrored[at]?.p).toBeCloseTo(p ?? 0, 9);
          expect(1 - (mirrored[at]?.drawn ?? 0)).toBeCloseTo(drawn, 9);
        }
      }),
      { numRuns: runs(200) },
    );
  });

  it("refuses what is no place", () => {
    expect(() => amongOthers([placed([1, 2, 1, 2])])).toThrow(RangeError);
    expect(() => amongOthers([placed([3, 2, 1, 2]), placed([1, 2, 1, 2])])).toThrow(RangeError);
    expect(() => amongOthers([placed([1, 2, 0.5, 2]), placed([1, 2, 1, 2])])).toThrow(RangeError);
  });
});

it("Holm steps down: 0.01, 0.04 and 0.03 are 0.03, 0.06 and 0.06", () => {
  expect(holmAdjusted([0.01, 0.04, 0.03])).toEqual([0.03, 0.06, 0.06]);
  expect(holmAdjusted([0.6, 0.9])).toEqual([1, 1]);
  expect(holmAdjusted([])).toEqual([]);
});
