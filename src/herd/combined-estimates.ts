/** One number for several groups: each weighted by how many pigs it holds. */
import type { Case } from "../cases/index.ts";
import { stratifiedProportion } from "../statistics/index.ts";
import { count, listing } from "../words/listing.ts";
import { levelPercent, percent, percentRange } from "../words/percent.ts";
import { type Estimate, sourcesOf } from "./estimate.ts";
import { type HeadCount, headCount } from "./head-count.ts";
import { indicatorAnswer } from "./indicator-answer.ts";
import { type Question, questionKey, questionsOf } from "./questions.ts";
import { type Dimension, type Stratum, type StratumOfCases, strata } from "./strata.ts";
import { reachOf } from "./wording.ts";

/** What was seen in one of the groups. */
export interface CombinedGroup {
  readonly group: string | null;
  /** Pigs of the group, and the file that says so; null where they are not known or not what the pigs stand for. */
  readonly head: number | null;
  readonly from: HeadCount["from"] | null;
  readonly examined: number;
  readonly not_examined: number;
  readonly affected: number;
}

export interface CombinedEstimate extends Pick<Estimate, "source" | "confidence" | "scale"> {
  /** Id of the indicator. */
  readonly indicator: string;
  readonly title: string;
  /** What the groups share. */
  readonly stratum: Stratum;
  readonly basis: string | null;
  readonly groups: readonly CombinedGroup[];
  readonly examined: number;
  readonly not_examined: number;
  readonly affected: number;
  /** Pigs of all groups; null when they were not combined, like the numbers below. */
  readonly population: number | null;
  /** Weighted by head count, 0 to 1. */
  readonly proportion: number | null;
  readonly lower: number | null;
  readonly upper: number | null;
  /** Pigs drawn singly that the sample is counted as; null also when all were examined. */
  readonly effective_size: number | null;
  readonly level: number;
  readonly method: "thinnest-stratum";
  /** Why the groups were not combined; null when they were. */
  readonly refused: string | null;
  readonly wording: string;
}

export interface CombineOptions {
  readonly by: readonly Dimension[];
  readonly indicators?: readonly string[];
  readonly levelOf: (cases: readonly Case[]) => number;
}

interface Part {
  readonly cell: StratumOfCases;
  readonly question: Question;
}

/**
 * The share in several groups together, weighted by head count, for every visit and age class that was split by, and
 * always by basis. Groups of pigs that were not drawn at random or examined whole are not combined, and it says why.
 */
export function combinedEstimates(
  all: readonly Case[],
  { by, indicators, levelOf }: CombineOptions,
): CombinedEstimate[] {
  const split: Dimension[] = [...by.filter((one) => one !== "group"), "group"];
  const found = new Map<string, Part[]>();
  for (const cell of strata(all, split))
    for (const question of questionsOf(cell, indicators)) {
      const [first] = question.cases;
      if (first === undefined) continue;
      const shared = { ...cell.stratum, group: undefined };
      const key = JSON.stringify([questionKey(question.id, question.indicator, first), shared, cell.basis]);
      found.set(key, [...(found.get(key) ?? []), { cell: { ...cell, cases: question.cases }, question }]);
    }
  return [...found.values()].flatMap((parts) => {
    const level = levelOf(parts.flatMap(({ cell }) => cell.cases));
    return combined(parts, { all, split, level });
  });
}

function combined(
  parts: readonly Part[],
  { all, split, level }: { all: readonly Case[]; split: readonly Dimension[]; level: number },
): CombinedEstimate[] {
  const [first] = parts;
  if (first === undefined) return [];
  const heads = parts.map(({ cell }) => headCount(cell, all, split));
  const groups = parts.map(({ cell, question }, index) => groupOf(cell, question, heads[index]));
  const sum = (of: (group: CombinedGroup) => number) => groups.reduce((total, group) => total + of(group), 0);
  const { group: _, ...stratum } = first.cell.stratum;
  const { id, indicator } = first.question;
  const common = {
    indicator: id,
    title: indicator.title,
    stratum,
    basis: first.cell.basis,
    groups,
    examined: sum((group) => group.examined),
    not_examined: sum((group) => group.not_examined),
    affected: sum((group) => group.affected),
    level,
    method: "thinnest-stratum" as const,
    ...sourcesOf(indicator, first.cell.cases),
  };
  const refused = whyNot(first.cell.basis, groups, heads, split);
  if (refused !== null) {
    const none = { population: null, proportion: null, lower: null, upper: null, effective_size: null };
    return [
      {
        ...common,
        ...none,
        refused,
        wording: `${indicator.title}: groups not combined, because ${refused}.`,
      },
    ];
  }
  const counts = groups.map(({ affected, examined, head }) => ({
    affected,
    examined,
    population: head ?? 0,
  }));
  const { proportion, lower, upper, effectiveSize, population } = stratifiedProportion(counts, { level });
  const numbers = { population, proportion, lower, upper, effective_size: effectiveSize };
  return [{ ...common, ...numbers, refused, wording: sentence({ ...common, ...numbers }) }];
}

function groupOf(
  { cases }: StratumOfCases,
  { indicator }: Question,
  found: ReturnType<typeof headCount> | undefined,
): CombinedGroup {
  const answers = cases.map((one) => indicatorAnswer(indicator, one));
  const examined = answers.filter((answer) => answer !== "not examined").length;
  const counted = found !== undefined && "head" in found ? found : undefined;
  return {
    group: cases[0]?.record.pig?.group ?? null,
    head: counted?.head ?? null,
    from: counted?.from ?? null,
    examined,
    not_examined: cases.length - examined,
    affected: answers.filter((answer) => answer === "yes").length,
  };
}

/** What to split by instead, where the ages keep the groups apart. */
const oneGroup = (split: readonly Dimension[]): string =>
  split.includes("age_class")
    ? "there is one group only of this age class; to combine groups of all ages split by visit and group (--by visit,group)"
    : "there is one group only";

/** Null when the groups can be combined. */
function whyNot(
  basis: string | null,
  groups: readonly CombinedGroup[],
  heads: readonly ReturnType<typeof headCount>[],
  split: readonly Dimension[],
): string | null {
  const reach = reachOf(basis);
  if (!reach.prevalence)
    return `these pigs (${reach.title}) do not stand for their groups, so head counts give them no weight`;
  if (groups.length < 2) return oneGroup(split);
  const unknown = heads.find((head) => "reason" in head);
  if (unknown !== undefined && "reason" in unknown) return unknown.reason;
  const blank = groups.find(({ examined }) => examined === 0);
  return blank === undefined ? null : `it was examined in no pig of ${blank.group ?? "one group"}`;
}

function sentence(
  found: Pick<
    CombinedEstimate,
    "title" | "groups" | "basis" | "level" | "affected" | "examined" | "not_examined"
  > & {
    readonly proportion: number;
    readonly lower: number;
    readonly upper: number;
    readonly population: number;
  },
): string {
  const { title, groups, basis, level, proportion, lower, upper, population } = found;
  const names = listing(groups.map(({ group }) => group ?? "no group"));
  const kind = basis === "random" ? "estimated prevalence" : "prevalence";
  const share = `${percent(proportion)}, ${levelPercent(level)} CI ${percentRange(lower, upper)}`;
  return [
    `${title}: ${share}, ${kind} in the ${count(population, "pig")} of ${names} together, each group weighted by its head count (${found.affected} of ${found.examined} pigs affected)`,
    ...(found.not_examined > 0
      ? [`not examined in ${found.not_examined} of ${found.examined + found.not_examined} pigs`]
      : []),
    "other groups of the farm are not in it.",
  ].join("; ");
}
