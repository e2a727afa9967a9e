/** How many pigs to examine, to know a share with a wanted precision? */
import { precisionFormula, precisionSampleSize } from "../statistics/index.ts";
import { count } from "../words/listing.ts";
import { levelPercent, percentRange } from "../words/percent.ts";
import { ascending, type Cell, cautionsOf, type Plan } from "./plan.ts";
import { designEffectSource, exactInterval, finiteExactInterval, normalFormula } from "./sources.ts";

/** A question about precision. Shares are from 0 to 1. */
export interface EstimateQuestion {
  /** Share expected to be affected, strictly between 0 and 1. */
  readonly expected: number;
  /** Wanted half-width of the interval, such as 0.05. */
  readonly within: number;
  /** Confidence level; 0.95 when left out. */
  readonly confidence?: number;
  /** Pigs in the herd or group; without limit when left out. */
  readonly herd?: number;
  /** Pigs examined in each pen, room or litter; 1 when left out. */
  readonly fromEachPen?: number;
  /** How alike pigs of one pen are (intracluster correlation); 0 when left out. */
  readonly correlation?: number;
  /** Expected shares of the table. */
  readonly over?: readonly number[];
}

const usualShares = [0.05, 0.1, 0.2, 0.3, 0.5];

type Asked = Required<Omit<EstimateQuestion, "herd">> & Pick<EstimateQuestion, "herd">;

/**
 * Plans a number to estimate: the smallest whose exact interval is as narrow as wanted at that and every larger
 * number; beside it the normal formula, and the number times the design effect when pens are sampled.
 *
 * @throws RangeError when a number is out of its range.
 */
export function planEstimate(question: EstimateQuestion): Plan {
  const asked: Asked = {
    confidence: 0.95,
    fromEachPen: 1,
    correlation: 0,
    ...question,
    over: ascending(...(question.over ?? usualShares), question.expected),
  };
  const { expected, within, confidence, herd, fromEachPen, correlation } = asked;
  const found = numbers(asked, expected);
  const clustered = found.design_effect > 1;
  return {
    plan: "estimate",
    title: "Number to estimate a share",
    asked: {
      expected,
      within,
      confidence,
      herd: herd ?? null,
      from_each_pen: fromEachPen,
      correlation,
    },
    answer: { ...found },
    sentences: [...sentences(asked, found), ...(clustered ? [penSentence(asked, found)] : [])],
    table: {
      title: `Number to examine for ± ${points(within)}, by expected share`,
      columns: [
        { key: "expected", head: "expected", as: "asked" },
        { key: "n", head: "examine", as: "count" },
        { key: "lower", head: "from", as: "share" },
        { key: "upper", head: "to", as: "share" },
        { key: "n_normal", head: "normal formula", as: "count" },
        ...(clustered ? [{ key: "n_pens", head: "with pens", as: "count" as const }] : []),
      ],
      rows: asked.over.map((share) => ({ expected: share, ...numbers(asked, share) })),
    },
    cautions: cautionsOf("random-only", "expected-guess", ...(clustered ? [] : ["pens-alike" as const])),
    sources: [
      herd === undefined ? exactInterval : finiteExactInterval,
      normalFormula,
      ...(clustered ? [designEffectSource] : []),
    ],
  };
}

interface Numbers extends Readonly<Record<string, Cell>> {
  readonly n: number;
  readonly affected: number;
  readonly half_width: number;
  readonly lower: number;
  readonly upper: number;
  readonly n_normal: number;
  readonly design_effect: number;
  readonly n_pens: number;
}

function numbers(
  { within, confidence: level, herd, fromEachPen, correlation }: Asked,
  proportion: number,
): Numbers {
  const population = herd === undefined ? {} : { population: herd };
  const exact = precisionSampleSize({ proportion, halfWidth: within, level, ...population });
  const normal = precisionFormula({
    proportion,
    halfWidth: within,
    level,
    ...population,
    clusterSize: fromEachPen,
    icc: correlation,
  });
  const wanted = Math.ceil(exact.n * normal.designEffect - 1e-9);
  return {
    n: exact.n,
    affected: exact.affected,
    half_width: exact.halfWidth,
    lower: exact.lower,
    upper: exact.upper,
    n_normal: normal.finite ?? normal.n,
    design_effect: normal.designEffect,
    n_pens: Math.min(wanted, herd ?? wanted),
  };
}

/** Percentage points: `5 points`. */
const points = (share: number): string => `${levelPercent(share).replace(" %", "")} points`;

function sentences({ expected, within, confidence, herd }: Asked, found: Numbers): string[] {
  const of = herd === undefined ? "" : ` of the ${herd}`;
  return [
    `Examine ${count(found.n, "pig")}${of}, drawn at random. If about ${levelPercent(expected)} are affected, the ${levelPercent(confidence)} interval reaches no more than ${points(within)} to either side on average: ${found.affected} of ${found.n} give ${percentRange(found.lower, found.upper)}.`,
    `The rule: of the two whole numbers of affected pigs next to the expected one the worse decides, and the precision holds at this and at every larger number. The normal formula would say ${found.n_normal}.`,
    ...(herd !== undefined && found.n >= herd ? ["That is the whole group."] : []),
  ];
}

function penSentence({ fromEachPen, correlation, herd }: Asked, found: Numbers): string {
  const pens = Math.ceil(found.n_pens / fromEachPen);
  const all =
    herd !== undefined && found.n_pens === herd ? " (the whole group; take fewer from each pen)" : "";
  return `With ${count(fromEachPen, "pig")} from each pen and a correlation of ${correlation} within pens the design effect is ${Number(found.design_effect.toPrecision(6))}: examine ${count(found.n_pens, "pig")}, from ${count(pens, "pen")}${all}. This multiplies the exact number and is an approximation.`;
}
