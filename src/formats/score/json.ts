/** Scores for scripts. Field names are stable; docs/json.md describes them. */
import type { HerdScores } from "../../herd/index.ts";
import type { ScoredCase } from "../../score/index.ts";
import { outputJson } from "../page/json.ts";

/** @param groups scores by group, where they were asked for */
export const scoreJson = (
  scored: { readonly cases: readonly ScoredCase[] },
  groups?: readonly HerdScores[],
): string => outputJson("score", 1, { ...scored, ...(groups !== undefined && { groups }) });
