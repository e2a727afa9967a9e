// Coverage and error of what `carcase agree` prints.
import { tally } from "./draws.mjs";
import { SNOUTS } from "./herd.mjs";

const scale = "maff-1978";
const GRADES = 6;
const SIZES = [20, 30, 60];

/** How often a reader misses the grade of the snout by one; the second then goes upwards in so many of them, others in half. */
const SLIPS = [
  [0.05, 0.5],
  [0.2, 0.5],
  [0.4, 0.5],
  [0.4, 0.9],
];

/** Chance of each grade that a reader gives, by the grade of the snout. */
const chancesOf = (slip, up) =>
  Array.from({ length: GRADES }, (_, grade) => {
    const chances = Array(GRADES).fill(0);
    const part = (at, p) => {
      chances[Math.min(GRADES - 1, Math.max(0, at))] += p;
    };
    part(grade, 1 - slip);
    part(grade - 1, slip * (1 - up));
    part(grade + 1, slip * up);
    return chances;
  });

/** What the readers would agree to in very many snouts. */
function truthOf(s, probabilities, readers) {
  const over = (of) =>
    probabilities.reduce((sum, p, grade) => sum + p * of(readers.map((read) => read[grade])), 0);
  const mean = (chances) => chances.reduce((sum, p, value) => sum + p * value, 0);
  const square = (chances) => chances.reduce((sum, p, value) => sum + p * value ** 2, 0);
  const average = (values) => values.reduce((sum, value) => sum + value, 0) / values.length;
  const means = readers.map((_, reader) => over((all) => mean(all[reader])));
  const between = readers.map((_, reader) => over((all) => square(all[reader])) - means[reader] ** 2);
  const shared = readers.flatMap((_, b) =>
    readers.slice(0, b).map((__, a) => over((all) => mean(all[a]) * mean(all[b])) - means[a] * means[b]),
  );
  const higher = means.reduce((sum, one) => sum + (one - average(means)) ** 2, 0) / (means.length - 1);
  const table = Array.from({ length: GRADES }, (_, a) =>
    Array.from({ length: GRADES }, (__, b) => over(([first, second]) => first[a] * second[b])),
  );
  const kappa = (weights) =>
    s.cohenKappa(
      table.map((row) => row.map((p) => Math.round(p * 1e8))),
      { weights },
    ).kappa;
  const same = table.reduce((sum, row, grade) => sum + row[grade], 0);
  return {
    unweighted: kappa("unweighted"),
    linear: kappa("linear"),
    quadratic: kappa("quadratic"),
    same,
    pabak: (GRADES * same - 1) / (GRADES - 1),
    difference: means[1] - means[0],
    agreement: average(shared) / (average(between) + higher),
    consistency: average(shared) / average(between),
  };
}

const TWO = [
  ["same", "share given the same value", ({ pairs: [pair] }) => pair.same],
  ["unweighted", "kappa", ({ pairs: [pair] }) => pair.grades.unweighted],
  ["linear", "kappa, linear weights", ({ pairs: [pair] }) => pair.grades.linear],
  ["quadratic", "kappa, quadratic weights", ({ pairs: [pair] }) => pair.grades.quadratic],
  ["pabak", "PABAK", ({ pairs: [pair] }) => pair.grades.pabak],
  ["agreement", "ICC(2,1)", ({ pairs: [pair] }) => pair.icc.agreement],
  ["consistency", "ICC(3,1)", ({ pairs: [pair] }) => pair.icc.consistency],
  ["difference", "mean difference of readers", ({ pairs: [pair] }) => pair.difference.mean],
];
const THREE = [
  ["agreement", "ICC(2,1), all readers", ({ together }) => together.agreement],
  ["consistency", "ICC(3,1), all readers", ({ together }) => together.consistency],
];

/** Each printed value of so many readers. */
function* coverage({ lib, s, random, runs: some }, { id: group, number, values, signs }) {
  const rows = values.map(([id, printed, read]) => ({ id, printed, read, found: tally() }));
  const error = tally();
  // They cost little, and limits are often missing where most snouts are sound.
  const runs = 4 * some;
  for (const n of SIZES)
    for (const [name, probabilities] of SNOUTS)
      for (const [slip, up] of SLIPS) {
        const readers = Array.from({ length: number }, (_, reader) =>
          chancesOf(slip, reader === 1 ? up : 0.5),
        );
        const truth = truthOf(s, probabilities, readers);
        const counts = rows.map(() => ({ held: 0, made: 0 }));
        let wrong = 0;
        for (let run = 0; run < runs; run++) {
          const found = readingsOf(lib, random, probabilities, readers, n);
          for (const [place, { id, read }] of rows.entries()) {
            const { lower, upper } = read(found);
            if (lower === null) continue;
            counts[place].made += 1;
            if (lower - 1e-12 <= truth[id] && truth[id] <= upper + 1e-12) counts[place].held += 1;
          }
          if (found.pairs[0].difference.p < 0.05) wrong += 1;
        }
        const at = `${n} snouts, ${name}, off by one in ${slip * 100} %${up === 0.5 ? "" : ", the second upwards"}`;
        for (const [place, { found }] of rows.entries())
          if (counts[place].made > runs / 20)
            found.add(at, counts[place].held / counts[place].made, counts[place].made);
        if (up === 0.5) error.add(at, wrong / runs, runs);
      }
  const design = `${group} readers, 20 to 60 snouts`;
  for (const { id, printed, found } of rows)
    yield found.row({ id: `agree-${group}-${id}`, printed, design, kind: "coverage" });
  if (signs)
    yield error.row({ id: "agree-sign", printed: "sign test: who is higher", design, kind: "error" });
}

function readingsOf(lib, random, probabilities, readers, n) {
  const readings = Array.from({ length: n }, (_, pig) => {
    const grade = random.pick(probabilities);
    return readers.map((read, reader) => ({
      pig: `${pig}`,
      reader: `reader ${reader}`,
      scale,
      value: random.pick(read[grade]),
      at: "",
    }));
  });
  return lib.agree(readings.flat(), (id) => lib.scales.get(id)).scales[0];
}

export const agree = {
  readers: (given) => coverage(given, { id: "two", number: 2, values: TWO, signs: true }),
  threeReaders: (given) => coverage(given, { id: "three", number: 3, values: THREE, signs: false }),
};
