/** What is asked of a comparison of visits that are drawn in pens, of several groups, or graded. */
import { clusterLimits } from "../knowledge/index.ts";
import { rankFormula } from "../statistics/index.ts";
import { count } from "../words/listing.ts";
import type { CompareQuestion } from "./comparison-question.ts";
import { type Design, type GroupChances, type Numbers, sumOf } from "./simulate.ts";

/** Numbers beyond these are not tried, all groups together. */
const most = { pens: 100, grades: 500, shares: 1000 } as const;

/** A question with its defaults, and how its numbers are counted. */
export interface Asked extends Design {
  readonly power: number;
  readonly pens: boolean;
  /** The number that is fixed; null when it is sought. */
  readonly fixed: number | null;
  /** `n` pigs (pens) from each group on each visit, or `n` times the numbers that were given. */
  readonly counts: "each" | "times";
  readonly numbers: (n: number) => Numbers;
}

export function askedOf(question: CompareQuestion): Asked {
  const { grades, thenGrades, power = 0.8, alpha = 0.05, test: rule = "fisher", seed = 1 } = question;
  const { fromEachPen = 1, correlation = 0 } = question;
  const scored = grades !== undefined && thenGrades !== undefined;
  const groups = scored ? [gradesOf(grades, thenGrades)] : sharesOf(question);
  if (groups.every(({ now, later }) => now.every((chance, value) => chance === later[value])))
    throw new RangeError(
      `the ${scored ? "grades" : "shares"} are the same on both visits, so there is no change to see`,
    );
  const pens = fromEachPen > 1;
  const base = { groups, scored, fromEachPen, correlation, alpha, rule, seed, power, pens };
  const now = pens ? question.pens : question.pigs;
  const later = (pens ? question.thenPens : question.thenPigs) ?? now;
  checkNumbers(question, now, later, groups.length);
  const [first] = now ?? [];
  if (now === undefined || later === undefined || first === undefined)
    return { ...base, fixed: null, counts: "each", numbers: (n) => same(groups, n) };
  if ([...now, ...later].every((one) => one === first))
    return { ...base, fixed: first, counts: "each", numbers: (n) => same(groups, n) };
  const numbers = (n: number): Numbers => ({
    now: now.map((one) => one * n),
    later: later.map((one) => one * n),
  });
  return { ...base, fixed: 1, counts: "times", numbers };
}

const same = (groups: readonly unknown[], n: number): Numbers => ({
  now: groups.map(() => n),
  later: groups.map(() => n),
});

function sharesOf({ from = [], to = [] }: CompareQuestion): GroupChances[] {
  const [now, later] = [[from].flat(), [to].flat()];
  if (now.length !== later.length)
    throw new RangeError(
      `--from has ${count(now.length, "share")} and --to ${later.length}; write one for each group, in the same order`,
    );
  return now.map((share, group) => ({
    now: [1 - share, share],
    later: [1 - (later[group] ?? 0), later[group] ?? 0],
  }));
}

/** Shorter lists are of grades that nobody has. */
function gradesOf(grades: readonly number[], later: readonly number[]): GroupChances {
  const places = Array.from({ length: Math.max(grades.length, later.length) }, (_, grade) => grade);
  const chances = (list: readonly number[]): number[] => {
    const all = sumOf(list);
    return places.map((grade) => (list[grade] ?? 0) / all);
  };
  return { now: chances(grades), later: chances(later) };
}

function checkNumbers(
  question: CompareQuestion,
  now: readonly number[] | undefined,
  later: readonly number[] | undefined,
  groups: number,
): void {
  const { fromEachPen = 1, pigs, thenPigs, pens, thenPens, correlation } = question;
  if (fromEachPen === 1 && (pens ?? thenPens ?? correlation) !== undefined)
    throw new RangeError(
      "pens and their correlation matter when several pigs of a pen are examined; say how many (--from-each-pen 4)",
    );
  if (fromEachPen > 1 && (pigs ?? thenPigs) !== undefined)
    throw new RangeError("with --from-each-pen the numbers are of pens; write --pens in place of --pigs");
  const option = fromEachPen > 1 ? "pens" : "pigs";
  if (now === undefined && later === undefined) return;
  if (now === undefined)
    throw new RangeError(`--then-${option} goes with --${option}, the numbers of the first visit`);
  for (const [name, numbers] of [
    [option, now],
    [`then-${option}`, later ?? now],
  ] as const) {
    if (numbers.length !== groups)
      throw new RangeError(
        `--${name} has ${count(numbers.length, "number")}, the shares are of ${count(groups, "group")}; write one number for each group`,
      );
    const all = sumOf(numbers);
    const limit = fromEachPen > 1 ? most.pens : question.grades === undefined ? most.shares : most.grades;
    if (all > limit) throw new RangeError(`--${name}: up to ${limit} ${option} a visit are worked out`);
    if (fromEachPen > 1 && all < clusterLimits.fewest)
      throw new RangeError(
        `--${name}: with fewer than ${clusterLimits.fewest} pens of several pigs on a visit compare claims nothing, whatever is found; write ${clusterLimits.fewest} or more, or examine one pig of each`,
      );
  }
}

export function limitsOf({ pens, scored, groups, counts, numbers }: Asked): {
  least: number;
  largest: number;
} {
  const limit = pens ? most.pens : scored ? most.grades : most.shares;
  const once = Math.max(sumOf(numbers(1).now), sumOf(numbers(1).later));
  const least = pens && counts === "each" ? Math.ceil(clusterLimits.fewest / groups.length) : 1;
  return { least, largest: Math.floor(limit / once) };
}

/** By the normal formula: pigs, or pens when several come from each, of all groups together. */
export function formulaOf({ groups, power, alpha, fromEachPen, correlation }: Asked) {
  const mean = (visit: keyof GroupChances): number[] =>
    (groups[0]?.[visit] ?? []).map(
      (_, value) => groups.reduce((sum, group) => sum + (group[visit][value] ?? 0), 0) / groups.length,
    );
  const { superiority, n } = rankFormula(mean("now"), mean("later"), { power, alpha });
  return { superiority, n: (n * designEffect({ fromEachPen, correlation })) / fromEachPen };
}

export const designEffect = ({
  fromEachPen,
  correlation,
}: Pick<Design, "fromEachPen" | "correlation">): number => 1 + (fromEachPen - 1) * correlation;
