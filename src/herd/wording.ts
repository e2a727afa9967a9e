/** One honest sentence for an estimate: what was counted, how sure it is, and what it says nothing of. */
import { count, listing } from "../words/listing.ts";
import { levelPercent, percent, percentRange } from "../words/percent.ts";
import { reachOf } from "./selection-basis.ts";
import type { Share } from "./share.ts";

export interface Counted {
  readonly title: string;
  /** Selection basis; null when it is not recorded. */
  readonly basis: string | null;
  readonly affected: number;
  readonly examined: number;
  readonly not_graded: number;
  readonly not_examined: number;
  /** Confidence level, between 0 and 1. */
  readonly level: number;
  readonly share: Omit<Share, "notes">;
  /** What must be known to read the numbers, each a clause. */
  readonly notes: readonly string[];
  /** Whether a note gives the share corrected for errors; a one-sided limit of what was called so then says too much. */
  readonly corrected: boolean;
}

/** The sentence that may be quoted. */
export const wordingOf = (counted: Counted): string =>
  `${counted.title}: ${[...main(counted), ...counted.notes, ...leftOut(counted)].join("; ")}.`;

function main(counted: Counted): string[] {
  const { examined, share } = counted;
  if (examined === 0) return counted.not_graded > 0 ? ["graded in no pig"] : [];
  if (examined === 1) return onePig(counted);
  if (share.reach === "these-pigs") return thesePigs(counted);
  if (share.groups !== undefined) return weighedGroups(counted, share.groups);
  return share.method === null || share.method === "bounds" ? wholeGroup(counted) : drawnPigs(counted);
}

function onePig({ affected, basis, not_graded, not_examined, share: { why } }: Counted): string[] {
  const { title, prevalence } = reachOf(basis);
  const seen = `${affected === 1 ? "seen" : "not seen"} in the one pig examined (${title})`;
  if (why !== null) return [seen, `it stands for no group, because ${why}`];
  if (basis === "complete" && not_graded + not_examined === 0) return [seen];
  return [
    seen,
    prevalence
      ? "a single pig says next to nothing of the group"
      : "a single pig that was not drawn at random says nothing of how common it is in the group",
  ];
}

function thesePigs({ affected, examined, basis, share: { why } }: Counted): string[] {
  const seen = `${affected} of ${examined} (${percent(affected / examined)})`;
  return [
    why === null
      ? `${seen} ${reachOf(basis).wording}`
      : `${seen} of these pigs; they stand for no group, because ${why}`,
  ];
}

function drawnPigs(counted: Counted): string[] {
  const { affected, examined, basis, level } = counted;
  const limits = `${levelPercent(level)} CI ${limitsOf(counted)}`;
  return [
    `${affected} of ${examined} pigs (${percent(affected / examined)}, ${limits}), ${reachOf(basis).wording}`,
    ...oneSided(counted),
  ];
}

/** The exact one-sided limit in words, when none or all are affected. */
function oneSided({ share: { one_sided: found }, level, corrected }: Counted): string[] {
  if (found === null || corrected) return [];
  const limit = `${found.limit === "upper" ? "no more than" : "at least"} ${percent(found.value)}`;
  return [`with ${levelPercent(level)} confidence ${limit} of the group (one-sided)`];
}

function wholeGroup(counted: Counted): string[] {
  const { affected, examined, share } = counted;
  const seen = `${affected} of ${examined} pigs (${percent(affected / examined)})`;
  if (share.method !== "bounds") return [`${seen}, ${reachOf("complete").wording}`];
  const { not_graded, not_examined } = counted;
  const others = not_graded + not_examined;
  return [
    `${seen}; prevalence in the ${count(examined + others, "pig")} of the group ${limitsOf(counted)}, whatever the ${others === 1 ? "other one has" : `other ${others} have`}`,
  ];
}

function weighedGroups(counted: Counted, groups: NonNullable<Share["groups"]>): string[] {
  const { affected, examined, level, share } = counted;
  const names = listing(groups.map(({ group }) => group ?? "no group"));
  const head = groups.reduce((sum, group) => sum + group.head, 0);
  return [
    `${percent(share.proportion ?? 0)}${share.method === null ? ", " : `, ${levelPercent(level)} CI ${limitsOf(counted)}, estimated `}prevalence in the ${count(head, "pig")} of ${names} together, each group weighted by its head count (${affected} of ${examined} pigs affected)`,
    "other groups of the farm are not in it",
  ];
}

const limitsOf = ({ share: { lower, upper } }: Counted): string => percentRange(lower ?? 0, upper ?? 1);

function leftOut({ examined, not_graded, not_examined }: Counted): string[] {
  const pigs = examined + not_graded + not_examined;
  if (not_examined === pigs)
    return [`not examined in ${pigs === 1 ? "the only pig" : `any of ${count(pigs, "pig")}`}`];
  return [
    ...(not_graded > 0 ? [`examined but not graded in ${not_graded} of ${count(pigs, "pig")}`] : []),
    ...(not_examined > 0 ? [`not examined in ${not_examined} of ${count(pigs, "pig")}`] : []),
  ];
}
