/** Scores for scripts. Field names are stable; docs/json.md describes them. */

import type { ScoredCase } from "../score/index.ts";
import { toJson } from "./json.ts";

export function scoreJson(scored: { readonly cases: readonly ScoredCase[] }): string {
  return toJson(scored);
}
