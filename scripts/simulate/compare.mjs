// Coverage and error of what `carcase compare` prints.
import { binomial, grid, measured, tally } from "./draws.mjs";
import { graded, LAYOUTS, penned, pennedGrades, SNOUTS } from "./herd.mjs";

const shares = { indicators: ["snout-grade-2-up"] };
const grades = { scales: ["maff-1978"] };
const alpha = 0.05;
const some = (n, of) => Array.from({ length: n }, (_, place) => of(place));
const firstOf = (lib, cases, asked) => lib.compareCases(cases, asked).blocks[0].comparisons[0];
const holds = ({ lower, upper }, truth) =>
  (lower ?? Number.NEGATIVE_INFINITY) - 1e-12 <= truth &&
  truth <= (upper ?? Number.POSITIVE_INFINITY) + 1e-12;

/** Pigs of two sides. */
const SIZES = [
  [5, 5],
  [10, 10],
  [6, 20],
  [10, 30],
  [20, 20],
];
const DRAWN = "5 to 30 drawn singly";

/** Pigs (or pens) of two groups, first at one visit, then at the other. */
const MIXES = [
  [
    [8, 4],
    [4, 8],
  ],
  [
    [15, 5],
    [6, 14],
  ],
];
const MIXED = "two groups in another mix";

const side = (pool, visit, x, n) => some(n, (place) => pool.single(visit, 0, place, place < x ? 3 : 0));

/** Two sides drawn singly, by enumeration of all tables. */
function* twoShares({ lib, pool }) {
  const rows = [
    ["difference", "difference of shares", (r) => r.difference, (a, b) => b - a],
    ["risk-ratio", "risk ratio", (r) => r.risk_ratio, (a, b) => b / a],
    ["odds-ratio", "odds ratio", (r) => r.odds_ratio, (a, b) => (b * (1 - a)) / (a * (1 - b))],
  ].map(([id, printed, read, truth]) => ({ id, printed, read, truth, found: tally(), far: tally() }));
  const error = tally();
  const points = [0.02, 0.03, ...grid(0.05, 0.95, 0.05), 0.97, 0.98];
  const rare = (p) => p < 0.05 || p > 0.95;
  for (const [n, m] of SIZES) {
    const tables = some(n + 1, (x) =>
      some(m + 1, (y) => firstOf(lib, [...side(pool, 0, x, n), ...side(pool, 1, y, m)], shares)),
    );
    const chances = new Map(
      points.flatMap((p) => [
        [`${n} ${p}`, binomial(n, p)],
        [`${m} ${p}`, binomial(m, p)],
      ]),
    );
    for (const a of points)
      for (const b of points) {
        const [first, second] = [chances.get(`${n} ${a}`), chances.get(`${m} ${b}`)];
        const sum = (of) =>
          tables.reduce(
            (all, row, x) =>
              all + row.reduce((part, one, y) => part + (of(one) ? first[x] * second[y] : 0), 0),
            0,
          );
        for (const { read, truth, found, far } of rows)
          (rare(a) || rare(b) ? far : found).add(
            `${n} and ${m} pigs, ${a} and ${b}`,
            sum(({ result }) => holds(read(result), truth(a, b))),
          );
        if (a === b)
          error.add(
            `${n} and ${m} pigs, ${a}`,
            sum(({ p }) => p < alpha),
          );
      }
  }
  for (const { id, printed, found, far } of rows) {
    yield found.row({ id: `compare-${id}`, printed, design: DRAWN, kind: "coverage" });
    const design = `${DRAWN}, hardly any or nearly all of a side`;
    yield far.row({ id: `compare-${id}-rare`, printed, design, kind: "coverage" });
  }
  yield error.row({
    id: "compare-shares",
    printed: "test of two shares",
    design: DRAWN,
    kind: "error",
  });
}

/** The tests of two shares that settings may choose in place of Fisher's. */
function* sharesRules({ lib, poolWith }) {
  for (const rule of ["boschloo", "mid-p"]) {
    const pool = poolWith({ settings: { shares_test: rule }, small: true });
    const error = tally();
    for (const [n, m] of SIZES) {
      const tables = some(n + 1, (x) =>
        some(m + 1, (y) => firstOf(lib, [...side(pool, 0, x, n), ...side(pool, 1, y, m)], shares).p),
      );
      for (const p of grid(0.05, 0.95, 0.05)) {
        const [first, second] = [binomial(n, p), binomial(m, p)];
        const value = tables.reduce(
          (sum, row, x) =>
            sum + row.reduce((part, one, y) => part + (one < alpha ? first[x] * second[y] : 0), 0),
          0,
        );
        error.add(`${n} and ${m} pigs, ${p}`, value);
      }
    }
    yield error.row({
      id: `compare-${rule}`,
      printed: `test of two shares, ${rule}`,
      design: DRAWN,
      kind: "error",
    });
  }
}

function* twoScores({ lib, pool, random, runs }) {
  const [error, shift] = [tally(), tally()];
  for (const [n, m] of [
    [6, 6],
    [10, 10],
    [10, 20],
  ])
    for (const [name, probabilities] of SNOUTS) {
      const up = [0, ...probabilities.slice(0, 4), probabilities[4] + probabilities[5]];
      let [wrong, held, made, moved, seen] = [0, 0, 0, 0, 0];
      for (let run = 0; run < runs; run++) {
        const first = graded(pool, random, 0, 0, n, probabilities);
        const same = firstOf(lib, [...first, ...graded(pool, random, 1, 0, m, probabilities)], grades);
        if (same.p < alpha) wrong += 1;
        if (same.result.shift.lower !== null) {
          made += 1;
          if (holds(same.result.shift, 0)) held += 1;
        }
        if (name === "bad") continue;
        const higher = firstOf(lib, [...first, ...graded(pool, random, 1, 0, m, up)], grades);
        if (higher.result.shift.lower === null) continue;
        seen += 1;
        if (holds(higher.result.shift, 1)) moved += 1;
      }
      error.add(`${n} and ${m} pigs, ${name}`, wrong / runs, runs);
      if (made > runs / 20) shift.add(`${n} and ${m} pigs, ${name}, no shift`, held / made, made);
      if (seen > runs / 20) shift.add(`${n} and ${m} pigs, ${name}, one grade`, moved / seen, seen);
    }
  yield error.row({
    id: "compare-scores",
    printed: "test of two scores",
    design: "6 to 20 drawn singly",
    kind: "error",
  });
  yield shift.row({
    id: "compare-shift",
    printed: "shift of scores",
    design: "6 to 20 drawn singly",
    kind: "coverage",
  });
}

/** Two groups with other shares, in another mix at each visit. */
function* unlikeSides({ lib, pool, random, runs }) {
  const [error, odds, ranks] = [tally(), tally(), tally()];
  for (const [mix, other] of MIXES)
    for (const [a, b] of [
      [0.2, 0.5],
      [0.05, 0.3],
      [0.6, 0.9],
    ])
      for (const ratio of [1, 4]) {
        let [wrong, held] = [0, 0];
        const raised = (p) => (p * ratio) / (1 - p + p * ratio);
        for (let run = 0; run < runs; run++) {
          const cases = [mix, other].flatMap((sizes, visit) =>
            sizes.flatMap((size, group) => {
              const base = [a, b][group];
              const p = visit === 1 ? raised(base) : base;
              return some(size, (place) => pool.single(visit, group, place, random.yes(p) ? 3 : 0));
            }),
          );
          const one = firstOf(lib, cases, shares);
          if (one.p < alpha) wrong += 1;
          if (holds(one.result.stratified.odds_ratio, ratio)) held += 1;
        }
        const at = `${mix} and ${other} pigs, ${a} and ${b}, odds ratio ${ratio}`;
        if (ratio === 1) error.add(at, wrong / runs, runs);
        odds.add(at, held / runs, runs);
      }
  for (const [mix, other] of MIXES) {
    let wrong = 0;
    for (let run = 0; run < runs; run++) {
      const cases = [mix, other].flatMap((sizes, visit) =>
        sizes.flatMap((size, group) => graded(pool, random, visit, group, size, SNOUTS[group][1])),
      );
      if (firstOf(lib, cases, grades).p < alpha) wrong += 1;
    }
    ranks.add(`${mix} and ${other} pigs`, wrong / runs, runs);
  }
  yield error.row({
    id: "compare-strata",
    printed: "test of shares within strata",
    design: MIXED,
    kind: "error",
  });
  yield odds.row({
    id: "compare-strata-odds",
    printed: "odds ratio within strata",
    design: MIXED,
    kind: "coverage",
  });
  yield ranks.row({
    id: "compare-strata-scores",
    printed: "test of scores within strata",
    design: MIXED,
    kind: "error",
  });
}

function* pensShares({ lib, pool, random, runs }) {
  const layouts = [
    ...LAYOUTS.map(([name, sizes]) => [name, sizes, sizes]),
    ["5 pens of 10, 20 pens of 3", Array(5).fill(10), Array(20).fill(3)],
  ];
  for (const [name, first, second] of layouts) {
    const [error, difference] = [tally(), tally()];
    for (const rho of [0, 0.1, 0.3])
      for (const [a, b] of [
        [0.1, 0.1],
        [0.3, 0.3],
        [0.5, 0.2],
      ]) {
        let [wrong, held] = [0, 0];
        for (let run = 0; run < runs; run++) {
          const cases = [
            ...penned(pool, random, 0, first, a, rho),
            ...penned(pool, random, 1, second, b, rho),
          ];
          const { p, result } = firstOf(lib, cases, shares);
          if (p < alpha) wrong += 1;
          if (holds(result.penned.difference, b - a)) held += 1;
        }
        if (a === b) error.add(`correlation ${rho}, ${a}`, wrong / runs, runs);
        difference.add(`correlation ${rho}, ${a} and ${b}`, held / runs, runs);
      }
    const id = `${first.length}-${first[0]}-${second.length}`;
    yield error.row({
      id: `compare-pens-${id}`,
      printed: "test of shares by pens",
      design: name,
      kind: "error",
    });
    yield difference.row({
      id: `compare-pens-difference-${id}`,
      printed: "difference by pens",
      design: name,
      kind: "coverage",
    });
  }
}

/** Scores by pens. */
function* pensMore({ lib, pool, random, runs }) {
  const error = tally();
  for (const [name, sizes] of LAYOUTS)
    for (const spread of [0, 0.7]) {
      let wrong = 0;
      for (let run = 0; run < runs; run++) {
        const cases = [0, 1].flatMap((visit) => pennedGrades(pool, random, visit, sizes, spread));
        if (firstOf(lib, cases, grades).p < alpha) wrong += 1;
      }
      error.add(`${name}, pens ${spread === 0 ? "alike" : "apart"}`, wrong / runs, runs);
    }
  yield error.row({
    id: "compare-pens-scores",
    printed: "test of scores by pens",
    design: "5 to 20 pens",
    kind: "error",
  });
}

/** Pens of two groups with other shares or grades, in another mix at each visit: no change in either group. */
function* pensUnlike({ lib, pool, random, runs }) {
  const [shared, scored] = [tally(), tally()];
  for (const mix of MIXES) {
    const pens = `${mix.map((visit) => visit.join(" and ")).join(", then ")} pens`;
    /** How often a difference is claimed. @param pigsOf pigs of a visit and group in these pens */
    const claimed = (pigsOf, asked) => {
      let wrong = 0;
      for (let run = 0; run < runs; run++) {
        const cases = mix.flatMap((visit, place) =>
          visit.flatMap((number, group) => pigsOf(place, Array(number).fill(5), group)),
        );
        if (firstOf(lib, cases, asked).p < alpha) wrong += 1;
      }
      return wrong / runs;
    };
    for (const rho of [0, 0.3])
      for (const base of [
        [0.1, 0.3],
        [0.3, 0.6],
      ]) {
        const pigs = (visit, sizes, group) => penned(pool, random, visit, sizes, base[group], rho, group);
        shared.add(`${pens}, correlation ${rho}, ${base.join(" and ")}`, claimed(pigs, shares), runs);
      }
    for (const spread of [0, 0.7]) {
      const pigs = (visit, sizes, group) =>
        pennedGrades(pool, random, visit, sizes, spread, 1 + group, group);
      scored.add(`${pens} ${spread === 0 ? "alike" : "apart"}`, claimed(pigs, grades), runs);
    }
  }
  const design = `pens of 5, ${MIXED}`;
  yield shared.row({
    id: "compare-pens-strata",
    printed: "test of shares by pens, within strata",
    design,
    kind: "error",
  });
  yield scored.row({
    id: "compare-pens-strata-scores",
    printed: "test of scores by pens, within strata",
    design,
    kind: "error",
  });
}

function* threeSides({ lib, pool, random, runs }) {
  const [trend, scores, groups] = [tally(), tally(), tally()];
  for (const n of [4, 8])
    for (const p of [0.1, 0.3, 0.5]) {
      let wrong = 0;
      for (let run = 0; run < runs; run++) {
        const cases = [0, 1, 2].flatMap((visit) =>
          some(n, (place) => pool.single(visit, 0, place, random.yes(p) ? 3 : 0)),
        );
        if (firstOf(lib, cases, shares).p < alpha) wrong += 1;
      }
      trend.add(`three of ${n}, ${p}`, wrong / runs, runs);
    }
  for (const n of [4, 8])
    for (const [name, probabilities] of SNOUTS) {
      let wrong = 0;
      for (let run = 0; run < runs; run++) {
        const cases = [0, 1, 2].flatMap((visit) => graded(pool, random, visit, 0, n, probabilities));
        if (firstOf(lib, cases, grades).p < alpha) wrong += 1;
      }
      scores.add(`three of ${n}, ${name}`, wrong / runs, runs);
    }
  for (const n of [6, 12])
    for (const p of [0.1, 0.3, 0.5]) {
      let wrong = 0;
      for (let run = 0; run < runs; run++) {
        const cases = [0, 1, 2].flatMap((group) =>
          some(n, (place) => pool.single(0, group, place, random.yes(p) ? 3 : 0)),
        );
        if (firstOf(lib, cases, { ...shares, between: "groups" }).p < alpha) wrong += 1;
      }
      groups.add(`three of ${n}, ${p}`, wrong / runs, runs);
    }
  yield trend.row({
    id: "compare-trend",
    printed: "trend of shares over visits",
    design: "three visits of 4 and 8",
    kind: "error",
  });
  yield scores.row({
    id: "compare-visits-scores",
    printed: "trend of scores over visits",
    design: "three visits of 4 and 8",
    kind: "error",
  });
  yield groups.row({
    id: "compare-groups",
    printed: "shares of groups",
    design: "three groups of 6 and 12",
    kind: "error",
  });
}

/**
 * Three visits whose pigs share pens, of one group or of two in another mix: the trend, and the slope from first to last. A
 * quarter of the runs: counting all ways takes long.
 */
function* trendsByPens({ lib, pool, random, runs }) {
  const uneven = LAYOUTS.at(-1)[1];
  const layouts = [
    ["7 pens of 2 to 12", [[uneven], [uneven], [uneven]]],
    [
      "pens of 5, two groups in another mix",
      [
        [4, 3],
        [3, 4],
        [2, 5],
      ].map((mix) => mix.map((pens) => Array(pens).fill(5))),
    ],
  ];
  const turns = Math.ceil(runs / 4);
  // The second visit lies where it lies in time, on the line from first to last.
  const middle = 189 / 364;
  const tried = [
    [0.1, 0.1],
    [0.3, 0.3],
    [0.2, 0.01],
  ];
  for (const [place, [name, visits]] of layouts.entries()) {
    const [error, slope, scored] = [tally(), tally(), tally()];
    const pigs = (of) =>
      visits.flatMap((groups, visit) => groups.flatMap((sizes, group) => of(visit, sizes, group)));
    for (const rho of [0, 0.3])
      for (const [a, b] of tried) {
        const at = (visit) => a + (b - a) * [0, middle, 1][visit];
        const found = measured(turns, () => {
          const cases = pigs((visit, sizes, group) =>
            penned(pool, random, visit, sizes, at(visit) + 0.2 * group, rho, group),
          );
          const { p, result } = firstOf(lib, cases, shares);
          return {
            coverage: holds(result.penned.difference, b - a),
            ...(a === b && { error: p < alpha }),
          };
        });
        error.addOf("error", `correlation ${rho}, ${a}`, found);
        slope.addOf("coverage", `correlation ${rho}, ${a} to ${b}`, found);
      }
    const means = tally();
    for (const spread of [0, 0.7]) {
      const found = measured(turns, () => {
        const cases = pigs((visit, sizes, group) =>
          pennedGrades(pool, random, visit, sizes, spread, 1 + group, group),
        );
        const { p, result } = firstOf(lib, cases, grades);
        return { coverage: holds(result.penned.difference, 0), error: p < alpha };
      });
      const said = `pens ${spread === 0 ? "alike" : "apart"}`;
      scored.addOf("error", said, found);
      means.addOf("coverage", said, found);
    }
    const design = `three visits, ${name}`;
    const id = `compare-trend-pens-${place + 1}`;
    const rows = [
      ["", "trend of shares by pens", "error", error],
      ["-slope", "slope of shares by pens", "coverage", slope],
      ["-scores", "trend of scores by pens", "error", scored],
      ["-scores-slope", "slope of scores by pens", "coverage", means],
    ];
    for (const [own, printed, kind, found] of rows)
      yield found.row({ id: `${id}${own}`, printed, design, kind });
  }
}

/** Shares of control and treated, and correlations within pens, of trials. */
const TRIED = [
  [0.1, 0.1],
  [0.3, 0.3],
  [0.5, 0.2],
  [0.4, 0.02],
  [0.2, 0.01],
  [0.8, 0.1],
];
const against = { error: "treated against control", coverage: "treated less control" };

/**
 * Rows of a trial: the test where both arms are alike, and the interval.
 * @param draw pigs for the shares of control and treated and a correlation
 */
function* trial({ lib, runs }, id, design, draw, { correlations = [0, 0.3], tried = TRIED } = {}) {
  const [error, difference] = [tally(), tally()];
  for (const rho of correlations)
    for (const [a, b] of tried) {
      const found = measured(Math.ceil(runs / 2), () => {
        const { p, result } = firstOf(lib, draw(a, b, rho), { ...shares, between: "treatment" });
        return { coverage: holds(result.difference, b - a), ...(a === b && { error: p < alpha }) };
      });
      error.addOf("error", `correlation ${rho}, ${a}`, found);
      difference.addOf("coverage", `correlation ${rho}, ${a} and ${b}`, found);
    }
  yield error.row({ id: `compare-arms-${id}`, printed: against.error, design, kind: "error" });
  yield difference.row({
    id: `compare-arms-difference-${id}`,
    printed: against.coverage,
    design,
    kind: "coverage",
  });
}

/** Treated against control pens. */
function* arms(all) {
  const { pool, random } = all;
  const layouts = [
    ["4 and 4 pens of 10", Array(4).fill(10), Array(4).fill(10)],
    ["5 and 5 pens of 4", Array(5).fill(4), Array(5).fill(4)],
    ["10 and 10 pens of 5", Array(10).fill(5), Array(10).fill(5)],
    ["7 and 7 pens of 2 to 12", LAYOUTS.at(-1)[1], LAYOUTS.at(-1)[1]],
    ["4 and 10 pens of 5", Array(4).fill(5), Array(10).fill(5)],
  ];
  for (const [name, control, treated] of layouts)
    yield* trial(
      all,
      `${control.length}-${treated.length}-${control[0]}`,
      name,
      (a, b, rho) => [
        ...penned(pool, random, 0, control, a, rho),
        ...penned(pool, random, 0, treated, b, rho, 0, 11),
      ],
      { correlations: [0, 0.1, 0.3] },
    );
}

/** Pens of two groups, of which the second has 15 of 100 more; the arms lie as far apart in both. */
function* armsOfGroups(all) {
  const { pool, random } = all;
  // Control and treated pens of each group, and pigs of a pen.
  const designs = [
    ["3 and 4, then 5 and 4 pens of 5 in two groups", [3, 4], [5, 4], 5],
    ["3 and 6, then 6 and 3 pens of 5 in two groups", [3, 6], [6, 3], 5],
    ["2 and 2, then 2 and 2 pens of 10 in two groups", [2, 2], [2, 2], 10],
  ];
  const tried = [...TRIED.filter(([a]) => a < 0.8), [0.7, 0.1]];
  for (const [place, [name, first, second, size]] of designs.entries())
    yield* trial(
      all,
      `groups-${place + 1}`,
      name,
      (a, b, rho) =>
        [first, second].flatMap(([control, treated], group) => [
          ...penned(pool, random, 0, Array(control).fill(size), a + 0.15 * group, rho, group),
          ...penned(pool, random, 0, Array(treated).fill(size), b + 0.15 * group, rho, group, 11),
        ]),
      { tried },
    );
}

/** Whole groups as allocated, of two pens that share what the group has; and a pen of either arm in each group. */
function* armsWhole(all) {
  const { poolWith, random } = all;
  const pool = poolWith({ trials: true, small: true });
  const pigs = (name, group, pen, share) =>
    some(5, (place) => pool.trial(name, group, pen, place, random.yes(share) ? 3 : 0));
  yield* trial(all, "whole-8", "4 and 4 whole groups of 10", (a, b, rho) =>
    some(8, (group) => {
      const share = random.penShare(group % 2 === 0 ? a : b, rho);
      return [1, 2].flatMap((pen) => pigs("whole", group, pen, share));
    }).flat(),
  );
  // A quarter of the groups lie up to 30 of 100 higher.
  for (const groups of [6, 12])
    yield* trial(all, `pairs-${groups}`, `${groups} groups with a pen of 5 in each arm`, (a, b, rho) =>
      some(groups, (group) => {
        const more = group % 4 === 3 ? Math.min(0.3, 1 - Math.max(a, b)) : 0;
        return [a, b].flatMap((share, arm) =>
          pigs("pairs", group, arm + 1, random.penShare(share + more, rho)),
        );
      }).flat(),
    );
}

/** Any false claim among all readings of two organs. */
function* several({ lib, pool, random, runs }) {
  const found = tally();
  const turns = Math.ceil(runs / 4);
  for (const [name, probabilities] of SNOUTS) {
    let wrong = 0;
    for (let run = 0; run < turns; run++) {
      const cases = [0, 1].flatMap((visit) =>
        some(12, (place) => pool.both(visit, place, random.pick(probabilities), random.yes(0.4) ? 20 : 0)),
      );
      const { comparisons } = lib.compareCases(cases, { seed: run }).blocks[0];
      if (comparisons.some(({ shown }) => shown)) wrong += 1;
    }
    found.add(`12 and 12 pigs, ${name}`, wrong / turns, turns);
  }
  yield found.row({
    id: "compare-several",
    printed: "any claim among all readings",
    design: "snouts and lungs, 12 and 12",
    kind: "error",
  });
}

/** Any farm that is said to stand out among farms of one share, or of a beta distribution (`rho` between them). */
function* farms({ lib, poolWith, random, runs }) {
  const names = some(20, (place) => `farm-${String(place).padStart(2, "0")}`);
  const pool = poolWith({ farms: names, small: true });
  const out = (cases) => lib.compareFarms(cases, shares).rankings[0].farms;
  const single = (sizes, p, rho) =>
    sizes.flatMap((n, farm) => {
      const own = random.penShare(p, rho);
      return some(n, (place) => pool.farm(names[farm], 0, place, random.yes(own) ? 3 : 0));
    });
  const inPens = (sizes, p) =>
    sizes.flatMap((pens, farm) =>
      some(pens, (pen) => pen).flatMap((pen) => {
        const own = random.penShare(p, 0.2);
        return some(5, (place) => pool.farm(names[farm], pen + 1, place, random.yes(own) ? 3 : 0));
      }),
    );
  const rows = [
    ["farms-equal", "equal farms, 10 to 30 drawn singly", (sizes, p) => single(sizes, p, 0)],
    [
      "farms-pens",
      "equal farms, 6 pens of 5, correlation 0.2",
      (sizes, p) =>
        inPens(
          sizes.map(() => 6),
          p,
        ),
    ],
    [
      "farms-apart",
      "farms apart, correlation 0.05, 10 to 30 drawn singly",
      (sizes, p) => single(sizes, p, 0.05),
    ],
  ];
  for (const [id, design, draw] of rows) {
    const [error, differing] = [tally(), tally()];
    for (const [name, sizes] of [
      ["5 farms of 30", Array(5).fill(30)],
      ["8 farms of 10 to 30", [10, 10, 15, 20, 20, 30, 30, 30]],
      ["20 farms of 30", Array(20).fill(30)],
    ])
      for (const p of [0.1, 0.3, 0.5]) {
        let [wrong, more] = [0, 0];
        for (let run = 0; run < runs; run++) {
          const found = out(draw(sizes, p));
          if (found.some(({ stands_out }) => stands_out !== null)) wrong += 1;
          if (found.some(({ differs }) => differs !== null)) more += 1;
        }
        error.add(`${name}, ${p}`, wrong / runs, runs);
        differing.add(`${name}, ${p}`, more / runs, runs);
      }
    yield error.row({ id: `compare-${id}`, printed: "any farm that stands out", design, kind: "error" });
    if (id === "farms-apart") continue;
    const printed = "any farm that differs, in brackets";
    yield differing.row({ id: `compare-${id}-differ`, printed, design, kind: "error" });
  }
}

/** By name: each draws its own pigs, so that one can be made again alone. */
export const compare = {
  twoShares,
  sharesRules,
  twoScores,
  unlikeSides,
  pensShares,
  pensMore,
  pensUnlike,
  threeSides,
  trendsByPens,
  arms,
  armsOfGroups,
  armsWhole,
  several,
  farms,
};
