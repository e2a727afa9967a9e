/** The work-up of a visit or a case: which diseases it fits, in order, and what the first leaves unexplained. */
import { diseases } from "../knowledge/diseases.ts";
import type { Subject } from "../patterns/index.ts";
import { type Fit, fitOf, hasCore, isExcluded } from "./fit.ts";
import { byRank } from "./order.ts";

export interface Workup {
  readonly subject: Subject;
  /** What fits, the best first. */
  readonly fits: readonly Fit[];
  /** What would fit, but for something that it cannot have. */
  readonly excluded: readonly Fit[];
}

export function workUp(subject: Subject): Workup {
  const all = [...diseases.values()].map((disease) => fitOf(disease, subject));
  const [core, rest] = [all.filter(hasCore), all.filter((fit) => !hasCore(fit) && fit.favour.length > 0)];
  // By age and signs alone a disease is listed only where nothing else fits.
  const fitting = core.some((fit) => !isExcluded(fit)) ? core : [...core, ...rest];
  return {
    subject,
    fits: fitting.filter((fit) => !isExcluded(fit)).sort(byRank),
    excluded: fitting.filter(isExcluded).sort(byRank),
  };
}
