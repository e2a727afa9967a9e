// Coverage and error of what `carcase agree` prints.
import { tally } from "./draws.mjs";
import { SNOUTS } from "./herd.mjs";

const scale = "maff-1978";
const GRADES = 6;

/** Chance of each pair of grades: both readers miss the grade of the snout by one now and then, the second more often upwards. */
function jointOf(probabilities, slip, up) {
  const read = (grade, high) => {
    const chances = Array(GRADES).fill(0);
    const part = (at, p) => {
      chances[Math.min(GRADES - 1, Math.max(0, at))] += p;
    };
    part(grade, 1 - slip);
    part(grade - 1, slip * (1 - high));
    part(grade + 1, slip * high);
    return chances;
  };
  const joint = Array.from({ length: GRADES }, () => Array(GRADES).fill(0));
  for (const [grade, p] of probabilities.entries()) {
    const [first, second] = [read(grade, 0.5), read(grade, up)];
    for (let a = 0; a < GRADES; a++) for (let b = 0; b < GRADES; b++) joint[a][b] += p * first[a] * second[b];
  }
  return joint;
}

/** What the readers would agree to in very many snouts. */
function truthOf(s, joint) {
  const table = joint.map((row) => row.map((p) => Math.round(p * 1e8)));
  const kappa = (weights) => s.cohenKappa(table, { weights }).kappa;
  let [meanA, meanB, squareA, squareB, product, same] = [0, 0, 0, 0, 0, 0];
  for (const [a, row] of joint.entries())
    for (const [b, p] of row.entries()) {
      meanA += p * a;
      meanB += p * b;
      squareA += p * a * a;
      squareB += p * b * b;
      product += p * a * b;
      if (a === b) same += p;
    }
  const [varA, varB, both] = [squareA - meanA ** 2, squareB - meanB ** 2, product - meanA * meanB];
  return {
    unweighted: kappa("unweighted"),
    linear: kappa("linear"),
    quadratic: kappa("quadratic"),
    same,
    pabak: (GRADES * same - 1) / (GRADES - 1),
    difference: meanB - meanA,
    agreement: (2 * both) / (varA + varB + (meanA - meanB) ** 2),
    consistency: (2 * both) / (varA + varB),
  };
}

const READ = [
  ["same", "share given the same value", (pair) => pair.same],
  ["unweighted", "kappa", (pair) => pair.grades.unweighted],
  ["linear", "kappa, linear weights", (pair) => pair.grades.linear],
  ["quadratic", "kappa, quadratic weights", (pair) => pair.grades.quadratic],
  ["pabak", "PABAK", (pair) => pair.grades.pabak],
  ["agreement", "ICC(2,1)", (pair) => pair.icc.agreement],
  ["consistency", "ICC(3,1)", (pair) => pair.icc.consistency],
  ["difference", "mean difference of readers", (pair) => pair.difference.mean],
];

function* readers({ lib, s, random, runs }) {
  const rows = READ.map(([id, printed, read]) => ({ id, printed, read, found: tally() }));
  const error = tally();
  for (const n of [30, 60])
    for (const [name, probabilities] of SNOUTS)
      for (const [slip, up] of [
        [0.2, 0.5],
        [0.4, 0.5],
        [0.4, 0.9],
      ]) {
        const joint = jointOf(probabilities, slip, up);
        const truth = truthOf(s, joint);
        const counts = rows.map(() => ({ held: 0, made: 0 }));
        let wrong = 0;
        for (let run = 0; run < runs; run++) {
          const pair = onePair(lib, random, joint.flat(), n);
          for (const [place, { id, read }] of rows.entries()) {
            const { lower, upper } = read(pair);
            if (lower === null) continue;
            counts[place].made += 1;
            if (lower - 1e-12 <= truth[id] && truth[id] <= upper + 1e-12) counts[place].held += 1;
          }
          if (pair.difference.p < 0.05) wrong += 1;
        }
        const at = `${n} snouts, ${name}, off by one in ${slip * 100} %${up === 0.5 ? "" : ", the second upwards"}`;
        for (const [place, { found }] of rows.entries())
          if (counts[place].made > runs / 20)
            found.add(at, counts[place].held / counts[place].made, counts[place].made);
        if (up === 0.5) error.add(at, wrong / runs, runs);
      }
  for (const { id, printed, found } of rows)
    yield found.row({
      id: `agree-${id}`,
      printed,
      design: "two readers, 30 and 60 snouts",
      kind: "coverage",
    });
  yield error.row({
    id: "agree-sign",
    printed: "sign test: who is higher",
    design: "two readers, 30 and 60 snouts",
    kind: "error",
  });
}

function onePair(lib, random, chances, n) {
  const readings = Array.from({ length: n }, (_, pig) => {
    const pair = random.pick(chances);
    return [Math.floor(pair / GRADES), pair % GRADES].map((value, reader) => ({
      pig: `${pig}`,
      reader: `reader ${reader}`,
      scale,
      value,
      at: "",
    }));
  });
  return lib.agree(readings.flat(), (id) => lib.scales.get(id)).scales[0].pairs[0];
}

export const agree = { readers };
