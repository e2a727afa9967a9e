/** One number for several groups: each weighted by how many pigs it holds. */
import type { Case } from "../cases/index.ts";
import { stratifiedProportion } from "../statistics/index.ts";
import { grouped } from "../words/grouped.ts";
import { count, listing } from "../words/listing.ts";
import { levelPercent, percent, percentRange } from "../words/percent.ts";
import { type Estimate, sourcesOf } from "./estimate.ts";
import { type HeadCount, headCount, type NoHeadCount } from "./head-count.ts";
import { answersOf, countOf } from "./indicator-answer.ts";
import { type IndicatorInStratum, indicatorsIn } from "./indicators-and-scales.ts";
import { reachOf } from "./selection-basis.ts";
import { type Dimension, strata } from "./strata.ts";

/** What was seen in one of the groups. */
interface CombinedGroup {
  readonly group: string | null;
  /** Pigs of the group, and the file that says so; null where they are not known or not what the pigs stand for. */
  readonly head: number | null;
  readonly from: HeadCount["from"] | null;
  readonly examined: number;
  readonly not_examined: number;
  readonly affected: number;
}

export interface CombinedEstimate
  extends Pick<
      Estimate,
      "indicator" | "title" | "stratum" | "basis" | "examined" | "not_examined" | "affected" | "level"
    >,
    Pick<Estimate, "source" | "confidence" | "scale"> {
  readonly groups: readonly CombinedGroup[];
  /** Pigs of all groups; null when they were not combined, like the numbers below. */
  readonly population: number | null;
  /** Weighted by head count, 0 to 1. */
  readonly proportion: number | null;
  readonly lower: number | null;
  readonly upper: number | null;
  /** Pigs drawn singly that the sample is counted as; null also when all were examined. */
  readonly effective_size: number | null;
  readonly method: "thinnest-stratum";
  /** Why the groups were not combined; null when they were. */
  readonly refused: string | null;
  readonly wording: string;
}

interface CombineOptions {
  readonly by: readonly Dimension[];
  readonly indicators?: readonly string[];
  readonly levelOf: (cases: readonly Case[]) => number;
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
  const parts = strata(all, split).flatMap((cell) => indicatorsIn(cell, indicators));
  const together = grouped(parts, ({ form, cell: { stratum, basis } }) =>
    JSON.stringify([form, { ...stratum, group: undefined }, basis]),
  );
  return [...together.values()].map((some) =>
    combined(some, { all, split, level: levelOf(some.flatMap(({ cell }) => cell.cases)) }),
  );
}

function combined(
  parts: readonly [IndicatorInStratum, ...IndicatorInStratum[]],
  { all, split, level }: { all: readonly Case[]; split: readonly Dimension[]; level: number },
): CombinedEstimate {
  const [{ id, indicator, cell: first }] = parts;
  const heads = parts.map(({ cell }) => headCount(cell, all, split));
  const groups = parts.map((part, index) => groupOf(part, heads[index]));
  const sum = (of: "examined" | "not_examined" | "affected") =>
    groups.reduce((total, group) => total + group[of], 0);
  const { group: _, ...stratum } = first.stratum;
  const common = {
    indicator: id,
    title: indicator.title,
    stratum,
    basis: first.basis,
    groups,
    examined: sum("examined"),
    not_examined: sum("not_examined"),
    affected: sum("affected"),
    level,
    method: "thinnest-stratum" as const,
    ...sourcesOf(indicator, first.cases),
  };
  const refused = whyNot(first.basis, groups, heads, split);
  if (refused !== null)
    return {
      ...common,
      population: null,
      proportion: null,
      lower: null,
      upper: null,
      effective_size: null,
      refused,
      wording: `${indicator.title}: groups not combined, because ${refused}.`,
    };
  const counts = groups.map(({ affected, examined, head }) => ({
    affected,
    examined,
    population: head ?? 0,
  }));
  const { effectiveSize, population, proportion, lower, upper } = stratifiedProportion(counts, { level });
  const numbers = { population, proportion, lower, upper, effective_size: effectiveSize };
  return { ...common, ...numbers, refused, wording: sentence({ ...common, ...numbers }) };
}

function groupOf(
  { indicator, cell: { cases } }: IndicatorInStratum,
  found: HeadCount | NoHeadCount | undefined,
): CombinedGroup {
  const { affected, examined } = countOf(answersOf(indicator, cases));
  const counted = found !== undefined && "head" in found ? found : undefined;
  return {
    group: cases[0]?.record.pig?.group ?? null,
    head: counted?.head ?? null,
    from: counted?.from ?? null,
    examined,
    not_examined: cases.length - examined,
    affected,
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
  heads: readonly (HeadCount | NoHeadCount)[],
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

type Weighted = Record<"population" | "proportion" | "lower" | "upper", number>;

function sentence(
  found: Pick<
    CombinedEstimate,
    "title" | "groups" | "basis" | "level" | "affected" | "examined" | "not_examined"
  > &
    Weighted,
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
