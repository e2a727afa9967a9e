/** Organs that a case says were not examined, whatever the reason. Blank organs are other rules' business. */
import type { Case } from "../cases/index.ts";
import { organById, type PlacedOrgan } from "../knowledge/index.ts";

export function unseen(one: Case, ids: readonly string[]): PlacedOrgan[] {
  return ids
    .map(organById)
    .filter((organ) => organ !== undefined)
    .filter((organ) => one.organ(organ).status === "not_examined");
}
