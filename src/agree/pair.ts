/** Two readers on the same pigs. */
import { fewestReadPigs, sourceLine } from "../knowledge/index.ts";
import {
  cohenKappa,
  type Icc,
  type IntraclassCorrelations,
  intraclassCorrelations,
  type Kappa,
  type KappaWeights,
  type Limits,
  type MeanInterval,
  meanInterval,
  type PercentAgreement,
  percentAgreement,
  signTest,
} from "../statistics/index.ts";
import { count } from "../words/listing.ts";

/** Chance-corrected agreement on the grades of a scale. */
interface GradeAgreement {
  readonly unweighted: Kappa;
  /** Weighted kappas are null where the grades have no order. */
  readonly linear: Kappa | null;
  readonly quadratic: Kappa | null;
  readonly pabak: PercentAgreement["pabak"];
  /** How often each pair of grades was given: row = grade of the first reader, column = of the second. */
  readonly table: readonly (readonly number[])[];
}

/** Who is higher. */
export interface Difference {
  /** Second reader less first, with its t interval, in points of the scale. */
  readonly mean: MeanInterval;
  readonly second_higher: number;
  readonly first_higher: number;
  readonly equal: number;
  /** Two-sided p of the exact sign test. */
  readonly p: number;
  /** Why the test and the interval of the mean say different things; null where they agree. */
  readonly note: string | null;
}

export interface PairAgreement {
  readonly first: string;
  readonly second: string;
  /** Pigs that both read. */
  readonly pigs: number;
  /** Share of pigs given the same value by both. */
  readonly same: PercentAgreement["agreement"];
  /** Null on a scale with too many values for grades. */
  readonly grades: GradeAgreement | null;
  /** Null below two pigs, and where the grades have no order. */
  readonly icc: Pick<IntraclassCorrelations, "agreement" | "consistency"> | null;
  /** Null where the grades have no order, so that nobody can be higher. */
  readonly difference: Difference | null;
  /** What to know before the values are believed: they rest on few pigs. Null where they do not. */
  readonly caution: string | null;
}

/** Readings of two readers of one pig, in the order of the readers. */
export type Two = readonly [number, number];

/**
 * Compares two readers.
 * @param pairs one a pig, at least one
 * @param grades the grades of the scale, ascending, every value among them; null when it has too many
 * @param nominal whether the grades are names without an order
 * @throws RangeError when there is no pair or the level is out of its range
 */
export function comparePair(
  [first, second]: readonly [string, string],
  pairs: readonly Two[],
  grades: readonly number[] | null,
  { level, nominal }: { readonly level: number; readonly nominal: boolean },
): PairAgreement {
  const equal = pairs.filter(([a, b]) => a === b).length;
  const differing = [
    [equal, pairs.length - equal],
    [0, 0],
  ];
  const icc = nominal || pairs.length < 2 ? null : correlations(pairs, level);
  return {
    first,
    second,
    pigs: pairs.length,
    same: percentAgreement(differing, { level }).agreement,
    grades: grades === null ? null : gradeAgreement(pairs, grades, level, nominal),
    icc: icc && { agreement: icc.agreement, consistency: icc.consistency },
    difference: nominal ? null : differenceOf(pairs, level),
    caution: fewPigs(pairs.length),
  };
}

/**
 * Intraclass correlations of readers who all read the same pigs, with limits where they can be trusted.
 * @param rows one a pig, at least two
 */
export function correlations(rows: readonly (readonly number[])[], level: number): IntraclassCorrelations {
  const found = intraclassCorrelations(rows, { level, limits: "jackknife" });
  const told = (one: Icc): Icc => unlessOneValue(telling(one), rows);
  return { ...found, agreement: told(found.agreement), consistency: told(found.consistency) };
}

/** An intraclass correlation below -1 has passed the pole of its formula; its size says nothing, so there is none. */
const telling = (found: Icc): Icc =>
  found.icc !== null && found.icc < -1
    ? { icc: null, lower: null, upper: null, reason: "below -1: the readers agree less than by chance" }
    : found;

/** Of 10 and 15 pigs limits of 95 % held the truth in 82 to 90 of 100 samples. The number is a choice of this project. */
const fewestForLimits = 20;

const without = <T extends Limits>(found: T, reason: string): T => ({
  ...found,
  lower: null,
  upper: null,
  reason,
});

const unlessFew = <T extends Limits>(found: T, pigs: number): T =>
  found.reason !== null || pigs >= fewestForLimits
    ? found
    : without(found, `fewer than ${fewestForLimits} pigs`);

/**
 * Without limits where more than 40 % of the readings are one value, as where most snouts are sound: the few others decide,
 * and limits of 95 % of ICC and quadratic kappa held the truth in 91 to 94 of 100 samples. The 40 % are a choice of this project.
 */
function unlessOneValue<T extends Limits>(found: T, rows: readonly (readonly number[])[]): T {
  const readings = new Map<number, number>();
  for (const value of rows.flat()) readings.set(value, (readings.get(value) ?? 0) + 1);
  const known = unlessFew(found, rows.length);
  return known.reason !== null || Math.max(...readings.values()) <= 0.4 * rows.flat().length
    ? known
    : without(known, "over 40 % of readings are one value");
}

/** What is said of values from few pigs; the least number and who names it are in src/knowledge/published-agreement.yaml. */
export function fewPigs(pigs: number): string | null {
  const { value, source } = fewestReadPigs;
  return pigs >= value
    ? null
    : `from ${count(pigs, "pig")}; ${value} or more are advised: ${sourceLine({ cite: source.cite, confidence: source.confidence })}`;
}

function gradeAgreement(
  pairs: readonly Two[],
  grades: readonly number[],
  level: number,
  nominal: boolean,
): GradeAgreement {
  const table = grades.map((row) =>
    grades.map((column) => pairs.filter(([a, b]) => a === row && b === column).length),
  );
  const kappa = (weights: KappaWeights): Kappa =>
    unlessFew(cohenKappa(table, { level, weights, limits: "jackknife" }), pairs.length);
  return {
    unweighted: kappa("unweighted"),
    linear: nominal ? null : kappa("linear"),
    quadratic: nominal ? null : unlessOneValue(kappa("quadratic"), pairs),
    pabak: percentAgreement(table, { level }).pabak,
    table,
  };
}

function differenceOf(pairs: readonly Two[], level: number): Difference {
  const second_higher = pairs.filter(([a, b]) => b > a).length;
  const first_higher = pairs.filter(([a, b]) => a > b).length;
  const mean = meanInterval(
    pairs.map(([a, b]) => b - a),
    { level },
  );
  const p = signTest(second_higher, first_higher);
  return {
    mean,
    second_higher,
    first_higher,
    equal: pairs.length - second_higher - first_higher,
    p,
    note: disagreement(mean, p < 1 - level),
  };
}

/** The sign test counts pigs; the interval weighs points and takes them as normal, which grades are not. */
function disagreement({ lower, upper }: MeanInterval, shown: boolean): string | null {
  if (lower === null || upper === null) return null;
  const without0 = lower > 0 || upper < 0;
  if (without0 === shown) return null;
  const both =
    "The test counts only who is higher; the interval goes by how many points and is rough for grades.";
  return without0
    ? `The interval leaves out 0 and the test shows nothing: too few pigs differ for it. ${both} Take it as a hint.`
    : `The test shows who is higher and the interval holds 0: a few large differences widen it. ${both} The test counts.`;
}
