/** One honest sentence for an estimate: what was counted, how sure it is, and what it says nothing of. */
import { count } from "../words/listing.ts";
import { levelPercent, percent, percentRange } from "../words/percent.ts";
import type { OneSided } from "./interval.ts";
import { type Reach, reachOf } from "./selection-basis.ts";

export interface Counted {
  readonly title: string;
  /** Selection basis; null when it is not recorded. */
  readonly basis: string | null;
  readonly affected: number;
  /** 1 or more. */
  readonly examined: number;
  readonly not_examined: number;
  readonly lower: number;
  readonly upper: number;
  /** Confidence level, between 0 and 1. */
  readonly level: number;
  /** The exact one-sided limit when none or all are affected; null when it is not to be said. */
  readonly oneSided: OneSided | null;
  /** What must be known to read the numbers, each a clause. */
  readonly notes: readonly string[];
  /** Whether the interval is of the group itself and not of a larger one. */
  readonly ofGroup: boolean;
  /** What was taken together without weighting: `3 groups`. */
  readonly pooled?: string;
}

/** The sentence when no pig could be read. @param pigs 1 or more */
export const nothingExamined = (title: string, pigs: number): string =>
  `${title}: not examined in ${pigs === 1 ? "the only pig" : `any of ${count(pigs, "pig")}`}.`;

/** The sentence for an estimate over one pig or more. */
export function wordingOf(counted: Counted): string {
  const reach = reachOf(counted.basis);
  const clauses = counted.examined === 1 ? onePig(counted, reach) : manyPigs(counted, reach);
  return `${counted.title}: ${[...clauses, ...leftOut(counted)].join("; ")}.`;
}

function onePig({ affected, lower, upper, level }: Counted, { title, prevalence }: Reach): string[] {
  const seen = affected === 1 ? "seen" : "not seen";
  return [
    `${seen} in the one pig examined (${title}; ${levelPercent(level)} CI ${percentRange(lower, upper)})`,
    prevalence
      ? "a single pig says next to nothing of the group"
      : "a single pig that was not drawn at random says nothing of how common it is in the group",
  ];
}

function manyPigs(counted: Counted, reach: Reach): string[] {
  const { affected, examined, lower, upper, level } = counted;
  const share = `(${percent(affected / examined)}, ${levelPercent(level)} CI ${percentRange(lower, upper)})`;
  const main = reach.prevalence
    ? `${affected} of ${examined} pigs ${share}, ${reach.wording}`
    : `${affected} of ${examined} ${share} ${reach.wording}`;
  const census =
    counted.basis === "complete" && !counted.ofGroup
      ? ["the interval is for pigs like these beyond the group"]
      : [];
  return [main, ...oneSided(counted, reach), ...census];
}

/** The exact one-sided limit in words, when none or all are affected. */
function oneSided({ oneSided: found, level, basis, ofGroup }: Counted, { prevalence }: Reach): string[] {
  if (found === null) return [];
  const limit = `${found.limit === "upper" ? "no more than" : "at least"} ${percent(found.value)}`;
  const whose = !prevalence
    ? "of pigs that come to be examined in this way"
    : basis === "complete" && !ofGroup
      ? "of such pigs"
      : "of the group";
  return [`with ${levelPercent(level)} confidence ${limit} ${whose} (one-sided)`];
}

function leftOut({ examined, not_examined, pooled, notes }: Counted): string[] {
  return [
    ...notes,
    ...(not_examined > 0 ? [`not examined in ${not_examined} of ${examined + not_examined} pigs`] : []),
    ...(pooled === undefined ? [] : [`${pooled} taken together without weighting`]),
  ];
}
