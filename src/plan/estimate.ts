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
 * number; beside it the normal formula. Where several pigs of a pen are examined, the exact number for a large herd is
 * multiplied by the design effect, and then corrected for the herd.
 *
 * @throws RangeError when a number is out of its range, or a correlation is given without the pigs from each pen.
 */
export function planEstimate(question: EstimateQuestion): Plan {
  if (question.correlation !== undefined && question.fromEachPen === undefined)
    throw new RangeError(
      "a correlation within pens matters when several pigs of a pen are examined; say how many (--from-each-pen 5)",
    );
  const asked: Asked = {
    confidence: 0.95,
    fromEachPen: 1,
    correlation: 0,
    ...question,
    over: ascending(...(question.over ?? usualShares), question.expected),
  };
  const { expected, within, confidence, herd, fromEachPen, correlation } = asked;
  const found = numbers(asked, expected);
  const pens = fromEachPen > 1;
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
    sentences: sentences(asked, found),
    table: {
      title: `Number to examine for ± ${points(within)}, by expected share`,
      columns: [
        { key: "expected", head: "expected", as: "asked" },
        { key: "n", head: "examine", as: "count" },
        ...(pens ? [{ key: "pens", head: "pens", as: "count" as const }] : []),
        ...(clustered ? [{ key: "n_singly", head: "drawn singly", as: "count" as const }] : []),
        { key: "lower", head: "from", as: "share" },
        { key: "upper", head: "to", as: "share" },
        { key: "n_normal", head: "normal formula", as: "count" },
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
  /** Pigs to examine. */
  readonly n: number;
  /** Pens that they come from; null when each comes from a pen of its own. */
  readonly pens: number | null;
  /** Pigs that would be enough when drawn singly; the numbers from `affected` to `upper` are of these. */
  readonly n_singly: number;
  readonly affected: number;
  readonly half_width: number;
  readonly lower: number;
  readonly upper: number;
  /** By the normal formula, with the design effect and the correction for the herd. */
  readonly n_normal: number;
  readonly design_effect: number;
}

function numbers(
  { within, confidence: level, herd, fromEachPen, correlation }: Asked,
  proportion: number,
): Numbers {
  const population = herd === undefined ? {} : { population: herd };
  const goal = { proportion, halfWidth: within, level };
  const singly = precisionSampleSize({ ...goal, ...population });
  const normal = precisionFormula({ ...goal, ...population, clusterSize: fromEachPen, icc: correlation });
  const effect = normal.designEffect;
  const n = effect > 1 ? clusteredNumber(goal, effect, herd, singly.n) : singly.n;
  return {
    n,
    pens: fromEachPen > 1 ? Math.ceil(n / fromEachPen) : null,
    n_singly: singly.n,
    affected: singly.affected,
    half_width: singly.halfWidth,
    lower: singly.lower,
    upper: singly.upper,
    n_normal: normal.finiteClustered ?? normal.nClustered,
    design_effect: effect,
  };
}

/** The exact number for a large herd times the design effect, then corrected for the herd; an approximation. */
function clusteredNumber(
  goal: { readonly proportion: number; readonly halfWidth: number; readonly level: number },
  effect: number,
  herd: number | undefined,
  singly: number,
): number {
  const large = precisionSampleSize(goal).n * effect;
  const raw = herd === undefined ? large : large / (1 + large / herd);
  return Math.max(singly, Math.ceil(raw - 1e-9));
}

/** Percentage points: `5 points`. */
const points = (share: number): string => `${levelPercent(share).replace(" %", "")} points`;

function sentences(asked: Asked, found: Numbers): string[] {
  const { expected, within, confidence, herd } = asked;
  const of = herd === undefined ? "" : ` of the ${herd}`;
  const precision = `the ${levelPercent(confidence)} interval reaches no more than ${points(within)} to either side on average`;
  const singly = `${found.affected} of ${found.n_singly} give ${percentRange(found.lower, found.upper)}.`;
  const clustered = found.design_effect > 1;
  return [
    `Examine ${count(found.n, "pig")}${of}, ${drawnFrom(asked, found)}. If about ${levelPercent(expected)} are affected, ${precision}${clustered ? "." : `: ${singly}`}`,
    ...(clustered ? [penSentence(asked, found, singly)] : []),
    ...(!clustered && found.pens !== null
      ? [
          "Pigs of one pen are taken to be no more alike than others; if they are, say how much with --correlation.",
        ]
      : []),
    `The rule: of the two whole numbers of affected pigs next to the expected one the worse decides, and the precision holds at this and at every larger number. The normal formula would say ${found.n_normal}.`,
    ...(herd !== undefined && found.n >= herd ? ["That is the whole group."] : []),
  ];
}

function drawnFrom({ fromEachPen }: Asked, { pens }: Numbers): string {
  if (pens === null) return "drawn at random";
  return `${fromEachPen} from each of ${count(pens, "pen")}, pens and pigs drawn at random`;
}

function penSentence(
  { fromEachPen, correlation, herd }: Asked,
  { n_singly, design_effect }: Numbers,
  singly: string,
): string {
  const effect = Number(design_effect.toPrecision(6));
  const corrected = herd === undefined ? "" : ` and corrected for the ${herd}`;
  return `Drawn singly ${count(n_singly, "pig")} would be enough: ${singly} With ${fromEachPen} from each pen and a correlation of ${correlation} within pens the design effect is ${effect}; the number for a large herd is multiplied by it${corrected}, which is an approximation. If there are fewer pens, take more from each and ask again.`;
}
