/** Scores by group, visit, farm or age class: how many were scored, and how the scores lie. */
import type { Archive, Case } from "../cases/index.ts";
import { casesOf, checkScales, scalesInUse } from "../score/index.ts";
import { scalesIn } from "./herd-estimates.ts";
import { type HerdScores, herdScores } from "./herd-scores.ts";
import { type Dimension, strata } from "./strata.ts";

export type GroupDimension = Dimension | "farm";
export const groupDimensions: readonly GroupDimension[] = ["group", "visit", "farm", "age_class"];

export interface GroupOptions {
  /** What to split by; selection basis always splits. */
  readonly by: readonly GroupDimension[];
  /** Ids of the scales. Default: as for `scoreCases`. */
  readonly scales?: readonly string[];
}

/**
 * Scores of every group on every scale, in the order of the groups. Pigs that were chosen in different ways are never
 * taken together.
 * @throws RangeError when an id names no scale
 */
export function groupScores(from: Archive | readonly Case[], options: GroupOptions): HerdScores[] {
  const cases = casesOf(from);
  checkScales(cases, options.scales);
  const inUse = scalesInUse(cases);
  const by = options.by.filter((one) => one !== "farm");
  return farmsOf(cases, options.by.includes("farm")).flatMap(({ farm, cases: ofFarm }) =>
    strata(ofFarm, by).flatMap((cell) =>
      scalesIn(cell, inUse, options.scales).map(({ scale, cases: scored }) =>
        herdScores(scale, { ...cell, stratum: { ...farm, ...cell.stratum }, cases: scored }),
      ),
    ),
  );
}

/** The cases of each farm, in the order of their first case; all together when farms do not split. */
function farmsOf(cases: readonly Case[], split: boolean) {
  if (!split) return [{ farm: {}, cases }];
  const farms = new Map<string | undefined, Case[]>();
  for (const one of cases) farms.set(one.farm?.folder, [...(farms.get(one.farm?.folder) ?? []), one]);
  return [...farms.values()].map((ofFarm) => ({
    farm: { farm: ofFarm[0]?.farm?.id ?? null },
    cases: ofFarm,
  }));
}
