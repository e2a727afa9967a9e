/** How the pigs were chosen, and what may be said of pigs chosen so. */
import type { Case } from "../cases/index.ts";
import { selectionBases } from "../knowledge/index.ts";

/** Null when it is not recorded. */
export const basisOf = (one: Case): string | null => one.record.selection?.basis ?? null;

/** What may be said of pigs chosen in one way. */
export interface Reach {
  readonly title: string;
  /** Whether a proportion over such pigs is a prevalence. */
  readonly prevalence: boolean;
  readonly wording: string;
}

const unknownReach: Reach = {
  title: "basis not recorded",
  prevalence: false,
  wording:
    "of the pigs examined; how they were chosen is not recorded, so this says nothing of how common it is in the group",
};

/** What may be said of pigs chosen on this basis; null or an unknown word allows nothing. */
export function reachOf(basis: string | null): Reach {
  return (
    (basis !== null && Object.hasOwn(selectionBases, basis) ? selectionBases[basis] : undefined) ??
    unknownReach
  );
}
