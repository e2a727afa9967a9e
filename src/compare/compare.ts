/** Did it change between visits, or does it differ between groups? */
import type { Archive, Case } from "../cases/index.ts";
import { reachOf } from "../herd/index.ts";
import { casesOf } from "../score/index.ts";
import { holm, summarise } from "../statistics/index.ts";
import { cautionsOf } from "./cautions.ts";
import { claimOf } from "./claims.ts";
import { type AnsweredSide, type Checked, check } from "./comparability.ts";
import type {
  Between,
  Cluster,
  Compared,
  CompareReport,
  Comparison,
  Factor,
  Reason,
  SideNumbers,
} from "./comparison.ts";
import { narrowed, type Where } from "./facets.ts";
import { strataOf } from "./made-up.ts";
import { pennedOf } from "./pens.ts";
import { type Asked, type Question, questionsOf } from "./questions.ts";
import { resultOf, valuesOf } from "./results.ts";
import {
  blockAnswer,
  type Made,
  refusedAnswer,
  refusedSentence,
  type Setting,
  sentenceOf,
} from "./sentences.ts";
import { type Block, splitSides } from "./sides.ts";
import { unlike } from "./unlike.ts";

export interface CompareOptions extends Asked {
  /** Default: visits when a farm has two or more, else groups. */
  readonly between?: Between;
  /** Only cases with these values. */
  readonly where?: Where;
  /** Factors on which the sides may differ altogether; each number then carries the caveat. */
  readonly evenIf?: readonly Factor[];
  /** What pigs share that makes them alike. Default: pens. */
  readonly cluster?: Cluster;
  /** Confidence level, between 0 and 1. Default: that of the settings (the highest, should they differ). */
  readonly level?: number;
}

/**
 * Compares visits of a farm or groups of a visit, indicator by indicator and scale by scale, for each selection basis.
 *
 * Two sides: Fisher's exact test, differences and ratios; Mann & Whitney with the Hodges-Lehmann shift for scores. More:
 * Cochran-Armitage over visits, Freeman & Halton over groups, Kruskal-Wallis for scores. Sides that are made up differently
 * are judged within strata, and shared pens by pens. Holm's correction runs over the comparisons of a block. What cannot
 * be compared has a reason in place of numbers.
 * @throws RangeError when there are no two sides, a name does not exist, or the level is not between 0 and 1
 */
export function compareCases(from: Archive | readonly Case[], options: CompareOptions = {}): CompareReport {
  const { where = {}, evenIf = [], cluster = "pen" } = options;
  const cases = narrowed(casesOf(from), where);
  const level = options.level ?? Math.max(0.5, ...cases.map((one) => one.settings.level));
  if (!(level > 0 && level < 1))
    throw new RangeError(`level must lie strictly between 0 and 1 (0.95 for 95 %), got ${level}`);
  const between = options.between ?? defaultBetween(cases);
  const { blocks, leftOut } = splitSides(cases, between, evenIf.includes("basis"));
  if (blocks.length === 0) throw new RangeError(nothingToCompare(between, cases.length));
  const compared = blocks.map((block) =>
    compareBlock(block, questionsOf(casesIn(block), options), { between, level, evenIf, cluster }),
  );
  const main = compared.find(({ comparable, too_few }) => comparable && !too_few) ?? compared[0];
  return { between, cluster, level, answer: main?.answer ?? "", blocks: compared, left_out: leftOut };
}

const casesIn = (block: Block): Case[] => block.sides.flatMap(({ cases }) => cases);

const defaultBetween = (cases: readonly Case[]): Between =>
  splitSides(cases, "visits", true).blocks.length > 0 ? "visits" : "groups";

const nothingToCompare = (between: Between, cases: number): string =>
  cases === 0
    ? "there is no case to compare"
    : between === "visits"
      ? "there are no two visits of one farm; give the folder of the farm, or compare --between groups"
      : "there are no two visits of one farm and no two groups of one visit; give the folder of a farm";

interface Asking {
  readonly between: Between;
  readonly level: number;
  readonly evenIf: readonly Factor[];
  readonly cluster: Cluster;
}

function compareBlock(block: Block, questions: readonly Question[], asking: Asking): Compared {
  const { between, level, evenIf, cluster } = asking;
  const checked = questions.map((question) => ({ question, ...check(block, question, evenIf) }));
  const drafts = checked.map((one) => draft(one, asking));
  const tested = drafts.filter(({ p }) => p !== null);
  const adjusted = holm(tested.map(({ p }) => p ?? 1));
  const prevalence = !block.mixed && reachOf(block.basis).prevalence;
  const pigs = block.mixed ? "chosen in different ways" : reachOf(block.basis).title;
  const tooFew = tested.length > 0 && tested.every(({ least_p }) => (least_p ?? 0) >= 1 - level);
  const setting: Setting = { between, level, cluster, prevalence, pigs, comparisons: tested.length, tooFew };
  const made: Made[] = [];
  const comparisons = drafts.map((one): Comparison => {
    const { result } = one;
    if (result === null)
      return { ...one, p_holm: null, shown: false, sentence: refusedSentence(one.title, one.reasons) };
    const p_holm = one.p === null ? null : (adjusted[tested.indexOf(one)] ?? 1);
    const whole: Made = { ...one, result, p_holm, shown: (p_holm ?? 1) < 1 - level };
    made.push(whole);
    return { ...whole, sentence: sentenceOf(whole, setting) };
  });
  const comparable = made.length > 0;
  const reasons = comparable ? [] : distinct(comparisons.flatMap((one) => one.reasons));
  const sides = block.sides.map(({ side, title, date, cases }) => ({
    side,
    title,
    date,
    pigs: cases.length,
  }));
  return {
    farm: block.farm,
    ...(block.visit !== undefined && { visit: block.visit }),
    basis: block.basis,
    mixed: block.mixed,
    pigs,
    prevalence,
    sides,
    too_few: tooFew,
    answer: comparable ? blockAnswer(made, setting, sides) : refusedAnswer(reasons),
    comparable,
    reasons,
    adjustment: { method: "holm", comparisons: tested.length },
    comparisons,
    cautions: cautionsOf(block, made, setting),
  };
}

type Draft = Omit<Comparison, "p_holm" | "shown" | "sentence">;

function draft({ question, ...checked }: Checked & { question: Question }, asking: Asking): Draft {
  const { kind, id, title, unit, source, confidence } = question;
  const known = { kind, question: id, title, ...(unit !== undefined && { unit }), source, confidence };
  const { sides, reasons, caveats } = checked;
  if (reasons.length > 0) return { ...known, comparable: false, reasons, caveats: [], sides: [], ...notMade };
  const { between, level, cluster, evenIf } = asking;
  const made = {
    sides,
    parted: strataOf(sides, between, evenIf, cluster),
    penned: sides.map((side) => pennedOf(side, cluster)),
  };
  const result = resultOf(kind, made, between, level);
  return {
    ...known,
    comparable: true,
    reasons,
    caveats: [...caveats, ...unlike(result, made.parted)],
    sides: sides.map((side) => numbersOf(kind, side)),
    result,
    ...claimOf(result, made, between, cluster),
  };
}

const notMade = { result: null, claim_on: null, no_claim: null, p: null, least_p: null } as const;

function numbersOf(kind: "indicator" | "scale", answered: AnsweredSide): SideNumbers {
  const { side, title } = answered.side;
  const values = valuesOf(answered);
  const examined = values.length;
  const counted = { side, title, examined, not_examined: answered.not_examined };
  if (kind === "scale") {
    const { mean, median } = summarise(values);
    return { ...counted, mean, median };
  }
  const affected = values.filter((value) => value === 1).length;
  return { ...counted, affected, proportion: affected / examined };
}

function distinct(reasons: readonly Reason[]): Reason[] {
  const seen = new Map(reasons.map((one) => [`${one.factor} ${one.text}`, one]));
  return [...seen.values()];
}
