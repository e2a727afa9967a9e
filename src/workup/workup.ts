/** The work-up of a visit or a case: which diseases it fits, in order, and what the first leaves unexplained. */
import { type Disease, diseases } from "../knowledge/diseases.ts";
import type { Subject } from "../patterns/index.ts";
import { type Fit, fitOf, hasCore, hasLesion, isExcluded } from "./fit.ts";
import { inOrder, withForms } from "./order.ts";
import type { Published } from "./outbreaks.ts";

export interface Workup {
  readonly subject: Subject;
  /** What fits, the best first, with other forms of the same disease. */
  readonly fits: readonly Fit[];
  /** What would fit, but for something that it cannot have. */
  readonly excluded: readonly Fit[];
}

/** @param published the outbreaks that it may know */
export function workUp(subject: Subject, published?: Published): Workup {
  const all = [...diseases.values()].map((disease) => fitOf(disease, subject, published));
  const seen = all.filter((fit) => hasCore(fit) || hasLesion(fit));
  // By age and signs alone a disease is listed only where nothing else fits.
  const fitting = seen.some((fit) => hasLesion(fit) && !isExcluded(fit))
    ? seen
    : all.filter(({ favour }) => favour.length > 0);
  return {
    subject,
    fits: withForms(inOrder(fitting.filter((fit) => !isExcluded(fit)))),
    excluded: inOrder(fitting.filter(isExcluded)),
  };
}

/** How a disease is told apart from the others among the best, as the knowledge of either says. */
export function toldApart(fit: Fit, fits: readonly Fit[]): { from: Disease; apart: string }[] {
  const near = fits.slice(0, nearest).filter((one) => one !== fit);
  return near.flatMap(({ disease }) => {
    const said =
      fit.disease.confused_with.find((one) => one.disease === disease.id) ??
      disease.confused_with.find((one) => one.disease === fit.disease.id);
    return said === undefined ? [] : [{ from: disease, apart: said.apart }];
  });
}

const nearest = 6;
