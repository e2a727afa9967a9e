// Coverage of what `carcase herd` prints.
import { binomial, grid, hypergeometric, tally } from "./draws.mjs";
import { HEADS } from "./pool.mjs";

const asked = { by: ["visit"], indicators: ["snout-grade-2-up"], scales: ["maff-1978"] };
const holds = (lower, upper, truth) => lower - 1e-12 <= truth && truth <= upper + 1e-12;
const some = (n, of) => Array.from({ length: n }, (_, place) => of(place));
const sides = (pool, x, n, group = 0) => some(n, (place) => pool.single(0, group, place, place < x ? 3 : 0));
const estimateOf = (lib, cases, more) => lib.herdEstimates(cases, { ...asked, ...more }).estimates[0];

/** Single draws from a large group, by enumeration. */
function* singly({ lib, pool }) {
  for (const interval of ["clopper-pearson", "blaker"]) {
    const found = tally();
    for (const n of [5, 10, 20, 30]) {
      const limits = some(n + 1, (x) => estimateOf(lib, sides(pool, x, n), { interval }));
      for (const p of grid(0.02, 0.98, 0.02)) {
        const chance = binomial(n, p);
        const value = limits.reduce(
          (sum, { lower, upper }, x) => sum + (holds(lower, upper, p) ? chance[x] : 0),
          0,
        );
        found.add(`${n} pigs, ${p}`, value);
      }
    }
    yield found.row({
      id: `herd-${interval}`,
      printed: `proportion, ${interval}`,
      design: "5 to 30 drawn singly",
      kind: "coverage",
    });
  }
}

/** The sentence 'at most so many' when none is affected: how often it is wrong, of all samples. */
function* oneSided({ lib, pool }) {
  const found = tally();
  for (const n of [5, 10, 20, 30]) {
    const { one_sided } = estimateOf(lib, sides(pool, 0, n), {});
    for (const p of grid(0.02, 0.98, 0.02))
      found.add(`${n} pigs, ${p}`, 1 - (p > one_sided.value ? binomial(n, p)[0] : 0));
  }
  yield found.row({
    id: "herd-one-sided",
    printed: "'at most', none affected",
    design: "5 to 30 drawn singly",
    kind: "coverage",
  });
}

function* finite({ lib, s, pool }) {
  const found = tally();
  const N = HEADS["nursery-1"];
  for (const n of [5, 10, 20, 30]) {
    const limits = some(n + 1, (x) =>
      estimateOf(lib, sides(pool, x, n), { finite: true, by: ["visit", "group"] }),
    );
    for (let D = 0; D <= N; D++) {
      const chance = hypergeometric(s, n, D, N);
      const value = limits.reduce(
        (sum, { lower, upper }, x) => sum + (holds(lower, upper, D / N) ? chance[x] : 0),
        0,
      );
      found.add(`${n} of ${N} pigs, ${D} affected`, value);
    }
  }
  yield found.row({
    id: "herd-finite",
    printed: "proportion of a group of known size",
    design: "5 to 30 of 60",
    kind: "coverage",
  });
}

/** Pens by number and pigs. */
export const LAYOUTS = [
  ["5 pens of 10", Array(5).fill(10)],
  ["8 pens of 5", Array(8).fill(5)],
  ["20 pens of 5", Array(20).fill(5)],
  ["7 pens of 2 to 12", [12, 9, 4, 3, 2, 2, 2]],
];

/** Pigs of pens in one visit and group. */
export const penned = (pool, random, visit, sizes, p, rho, group = 0, from = 1) =>
  sizes.flatMap((size, pen) => {
    const share = random.penShare(p, rho);
    return some(size, (place) => pool.penned(visit, from + pen, place, random.yes(share) ? 3 : 0, group));
  });

/** The same with grades; pens lie apart by `spread` grades, about `centre`. */
export const pennedGrades = (pool, random, visit, sizes, spread, centre = 1.5, group = 0) =>
  sizes.flatMap((size, pen) => {
    const own = spread * random.normal();
    return some(size, (place) => {
      const grade = Math.round(centre + own + random.normal());
      return pool.penned(visit, pen + 1, place, Math.min(5, Math.max(0, grade)), group);
    });
  });

function* pens({ lib, pool, random, runs }) {
  for (const [name, sizes] of LAYOUTS) {
    const found = tally();
    for (const rho of [0, 0.1, 0.3])
      for (const p of [0.1, 0.3, 0.6]) {
        let held = 0;
        for (let run = 0; run < runs; run++) {
          const { lower, upper } = estimateOf(lib, penned(pool, random, 0, sizes, p, rho), {
            cluster: "pen",
          });
          if (holds(lower, upper, p)) held += 1;
        }
        found.add(`correlation ${rho}, ${p}`, held / runs, runs);
      }
    yield found.row({
      id: `herd-pens-${sizes.length}-${sizes[0]}`,
      printed: "proportion by pens",
      design: name,
      kind: "coverage",
    });
  }
}

/** Two groups of 60 and 540, the same number or a tenth each. */
function* combined({ lib, s, pool }) {
  const found = tally();
  const [one, other] = Object.values(HEADS);
  for (const [n, m] of [
    [5, 5],
    [4, 12],
  ]) {
    const limits = some(n + 1, (x) =>
      some(
        m + 1,
        (y) =>
          lib.herdEstimates([...sides(pool, x, n), ...sides(pool, y, m, 1)], { ...asked, combine: true })
            .combined[0],
      ),
    );
    for (const a of [0, 0.1, 0.25, 0.5, 0.75, 1])
      for (const b of [0, 0.05, 0.1, 0.25, 0.5, 0.75, 1]) {
        const [D, E] = [Math.round(a * one), Math.round(b * other)];
        const [chanceX, chanceY] = [hypergeometric(s, n, D, one), hypergeometric(s, m, E, other)];
        const truth = (D + E) / (one + other);
        let value = 0;
        for (const [x, row] of limits.entries())
          for (const [y, { lower, upper }] of row.entries())
            if (holds(lower, upper, truth)) value += chanceX[x] * chanceY[y];
        found.add(`${n} and ${m} pigs, ${a} and ${b}`, value);
      }
  }
  yield found.row({
    id: "herd-combined",
    printed: "groups combined by head count",
    design: "rooms of 60 and 540",
    kind: "coverage",
  });
}

function* knownTest({ lib, pool }) {
  const found = tally();
  const test = { sensitivity: 0.9, specificity: 0.95 };
  for (const n of [10, 20, 30]) {
    const limits = some(n + 1, (x) => estimateOf(lib, sides(pool, x, n), { test }).true_prevalence);
    for (const p of grid(0, 1, 0.05)) {
      const chance = binomial(n, p * test.sensitivity + (1 - p) * (1 - test.specificity));
      const value = limits.reduce(
        (sum, { lower, upper }, x) => sum + (holds(lower, upper, p) ? chance[x] : 0),
        0,
      );
      found.add(`${n} pigs, ${p}`, value);
    }
  }
  yield found.row({
    id: "herd-test-known",
    printed: "corrected for a known test",
    design: "Se 90 %, Sp 95 %, 10 to 30 pigs",
    kind: "coverage",
  });
}

function* estimatedTest({ lib, pool, random, runs }) {
  const found = tally();
  for (const n of [20, 30, 40])
    for (const p of [0, 0.1, 0.3, 0.6, 1]) {
      let [held, made] = [0, 0];
      for (let run = 0; run < runs; run++) {
        const test = {
          sensitivity: { right: random.count(50, 0.9), of: 50 },
          specificity: { right: random.count(100, 0.95), of: 100 },
        };
        const x = random.count(n, p * 0.9 + (1 - p) * 0.05);
        const { lower, upper } = estimateOf(lib, sides(pool, x, n), { test }).true_prevalence;
        if (lower === null) continue;
        made += 1;
        if (holds(lower, upper, p)) held += 1;
      }
      if (made > runs / 20) found.add(`${n} pigs, ${p}`, held / made, made);
    }
  yield found.row({
    id: "herd-test-estimated",
    printed: "corrected for an estimated test",
    design: "Se 45/50, Sp 95/100, 20 to 40 pigs",
    kind: "coverage",
  });
}

/** Snout grades as they come: a sound room, a middling one and a bad one. */
export const SNOUTS = [
  ["most sound", [0.7, 0.15, 0.08, 0.04, 0.02, 0.01]],
  ["middling", [0.25, 0.3, 0.2, 0.15, 0.07, 0.03]],
  ["bad", [0.05, 0.1, 0.2, 0.3, 0.2, 0.15]],
];
export const graded = (pool, random, visit, group, n, probabilities, from = 0) =>
  some(n, (place) => pool.single(visit, group, place + from, random.pick(probabilities)));

function* scores({ lib, pool, random, runs }) {
  const kinds = [
    [
      "mean",
      "mean score, t",
      ({ mean_interval }) => mean_interval,
      (probabilities) => probabilities.reduce((sum, p, grade) => sum + p * grade, 0),
    ],
    [
      "bootstrap",
      "mean score, bootstrap",
      ({ bootstrap }) => bootstrap,
      (probabilities) => probabilities.reduce((sum, p, grade) => sum + p * grade, 0),
    ],
    ["median", "median score", ({ median_interval }) => median_interval, medianOf],
  ];
  for (const [id, printed, read, truthOf] of kinds) {
    const found = tally();
    const turns = id === "bootstrap" ? Math.ceil(runs / 2) : runs;
    for (const n of [10, 20, 30])
      for (const [name, probabilities] of SNOUTS) {
        let [held, made] = [0, 0];
        for (let run = 0; run < turns; run++) {
          const cases = graded(pool, random, 0, 0, n, probabilities);
          const [found] = lib.herdEstimates(cases, {
            ...asked,
            ...(id === "bootstrap" && { seed: run }),
          }).scores;
          const { lower, upper } = read(found);
          if (lower === null) continue;
          made += 1;
          if (holds(lower, upper, truthOf(probabilities))) held += 1;
        }
        if (made > 0) found.add(`${n} pigs, ${name}`, held / made, made);
      }
    yield found.row({ id: `herd-${id}`, printed, design: "10 to 30 snout grades", kind: "coverage" });
  }
}

function medianOf(probabilities) {
  let sum = 0;
  return probabilities.findIndex((p) => {
    sum += p;
    return sum >= 0.5;
  });
}

/** By name: each draws its own pigs, so that one can be made again alone. */
export const herd = { singly, oneSided, finite, pens, combined, knownTest, estimatedTest, scores };
