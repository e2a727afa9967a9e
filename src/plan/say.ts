/** What will a given number of pigs be able to say? */
import {
  affectedCount,
  binomialInterval,
  detectableShares,
  detectionProbability,
  finiteInterval,
  LARGEST_GROUP,
  oneSidedLower,
  oneSidedUpper,
  type Rounding,
  ruleFor,
  type SharesRule,
  zeroUpperFinite,
} from "../statistics/index.ts";
import { count } from "../words/listing.ts";
import { levelPercent, percent, percentRange } from "../words/percent.ts";
import { ascending, type Cell, cautionsOf, type Plan } from "./plan.ts";
import { exactDraw, exactInterval, finiteExactInterval, sharesTests, unlimitedDraw } from "./sources.ts";

/** A question about a number that is already fixed. Shares are from 0 to 1. */
export interface SayQuestion {
  /** Pigs that can be examined. */
  readonly pigs: number;
  /** Pigs in the herd or group; without limit when left out. */
  readonly herd?: number;
  /** Confidence level; 0.95 when left out. */
  readonly confidence?: number;
  /** Share affected that a second visit would be compared with; 0.5 when left out. */
  readonly from?: number;
  /** Wanted probability of seeing a change; 0.8 when left out. */
  readonly power?: number;
  /** Significance level of the two-sided test; 0.05 when left out. */
  readonly alpha?: number;
  /** The test that will be made; Fisher's when left out, and where a visit has too many pigs for the other. */
  readonly test?: SharesRule;
  /** How a share of the herd becomes whole pigs; up when left out. */
  readonly rounding?: Rounding;
  /** Shares affected of the table. */
  readonly over?: readonly number[];
}

const usualShares = [0.01, 0.05, 0.1, 0.2, 0.3, 0.5];

type Asked = Required<Omit<SayQuestion, "herd">> & Pick<SayQuestion, "herd">;

/**
 * What `pigs` pigs, drawn at random, will be able to say: the limit when none or all are affected, the width of
 * intervals, the probability of seeing at least one, the least change to be seen on a second visit.
 *
 * @throws RangeError when a number is out of its range.
 */
export function planSay(question: SayQuestion): Plan {
  const asked: Asked = {
    confidence: 0.95,
    from: 0.5,
    power: 0.8,
    alpha: 0.05,
    rounding: "ceil",
    ...question,
    test: ruleFor(question.pigs, question.test ?? "fisher"),
    over: ascending(...(question.over ?? usualShares)),
  };
  const { pigs, herd, confidence, from, power, alpha, test, rounding } = asked;
  if (herd !== undefined && pigs > herd) {
    throw new RangeError(`${count(pigs, "pig")} cannot be drawn from a herd of ${herd}`);
  }
  const half = Math.floor(pigs / 2);
  const middle = interval(asked, half);
  const least =
    pigs <= LARGEST_GROUP
      ? detectableShares(pigs, pigs, from, { power, alpha, rule: test })
      : { below: null, above: null };
  return {
    plan: "say",
    title: `What ${count(pigs, "pig")} will be able to say`,
    asked: { pigs, herd: herd ?? null, confidence, from, power, alpha, test, rounding },
    answer: {
      none_affected_upper: noneUpper(asked),
      all_affected_lower: allLower(asked),
      half_affected_lower: middle.lower,
      half_affected_upper: middle.upper,
      least_fall_to: least.below,
      least_rise_to: least.above,
    },
    sentences: [
      noneSentence(asked),
      allSentence(asked),
      `If half are affected (${half} of ${pigs}), the ${levelPercent(confidence)} interval goes from ${percentRange(middle.lower, middle.upper)}: about ${percent((middle.upper - middle.lower) / 2)} to either side.`,
      changeSentence(asked, least),
    ],
    table: {
      title: `If this share of ${herd === undefined ? "a large herd" : `the ${herd}`} is affected`,
      columns: [
        { key: "prevalence", head: "affected", as: "asked" },
        { key: "seen", head: "at least one seen", as: "share" },
        { key: "expected", head: `expected of ${pigs}`, as: "count" },
        { key: "lower", head: "interval then from", as: "share" },
        { key: "upper", head: "to", as: "share" },
      ],
      rows: asked.over.map((share) => row(asked, share)),
    },
    cautions: cautionsOf("random-only", "not-free", "pens-alike", "perfect-eye"),
    sources: [
      ...(herd === undefined ? [exactInterval, unlimitedDraw] : [finiteExactInterval, exactDraw]),
      ...(least.below === null && least.above === null ? [] : [sharesTests[test].source]),
    ],
  };
}

function interval(
  { pigs, herd, confidence: level }: Asked,
  affected: number,
): { lower: number; upper: number } {
  if (herd !== undefined) return finiteInterval(affected, pigs, herd, { level });
  return binomialInterval(affected, pigs, { level });
}

const noneUpper = ({ pigs, herd, confidence }: Asked): number =>
  herd === undefined ? oneSidedUpper(0, pigs, confidence) : zeroUpperFinite(pigs, herd, confidence).upper;

function noneSentence(asked: Asked): string {
  const { pigs, herd, confidence } = asked;
  const sure = `If none of ${pigs} is affected, there is ${levelPercent(confidence)} confidence that at most`;
  if (herd === undefined) return `${sure} ${percent(noneUpper(asked))} of a large herd are.`;
  const { upperCount } = zeroUpperFinite(pigs, herd, confidence);
  return `${sure} ${upperCount} of the ${herd} (${percent(upperCount / herd)}) are.`;
}

/** The fewest affected pigs of the herd when all examined are: as many healthy ones as affected ones when none is. */
const allLower = ({ pigs, herd, confidence }: Asked): number =>
  herd === undefined
    ? oneSidedLower(pigs, pigs, confidence)
    : (herd - zeroUpperFinite(pigs, herd, confidence).upperCount) / herd;

function allSentence(asked: Asked): string {
  const { pigs, herd, confidence } = asked;
  const sure = `If all of ${pigs} are affected, at least`;
  if (herd === undefined) return `${sure} ${percent(allLower(asked))} of a large herd are.`;
  const fewest = herd - zeroUpperFinite(pigs, herd, confidence).upperCount;
  return `${sure} ${fewest} of the ${herd} (${percent(fewest / herd)}) are.`;
}

function changeSentence(
  { pigs, from, power, alpha, test }: Asked,
  least: { below: number | null; above: number | null },
): string {
  if (pigs > LARGEST_GROUP) return `The least change is worked out for up to ${LARGEST_GROUP} pigs a visit.`;
  const parts = [
    ...(least.below === null ? [] : [`a fall to ${percent(least.below)}`]),
    ...(least.above === null ? [] : [`a rise to ${percent(least.above)}`]),
  ];
  const start = `Against a second visit with ${pigs}, starting from ${levelPercent(from)}:`;
  if (parts.length === 0)
    return `${start} no change at all would be seen with a probability of ${levelPercent(power)}.`;
  return `${start} ${parts.join(" or ")} would be seen with a probability of ${levelPercent(power)} (${sharesTests[test].name} at ${levelPercent(alpha)}); smaller changes would mostly be missed.`;
}

function row(asked: Asked, share: number): Record<string, Cell> {
  const { pigs, herd, rounding } = asked;
  const seen =
    herd === undefined
      ? -Math.expm1(pigs * Math.log1p(-share))
      : detectionProbability({ population: herd, affected: affectedCount(herd, share, rounding) }, pigs);
  const expected = Math.min(pigs, Math.round(pigs * share));
  const { lower, upper } = interval(asked, expected);
  return { prevalence: share, seen, expected, lower, upper };
}
