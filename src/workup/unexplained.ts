/** The lesions that the first disease does not explain, and what does: several causes at once are usual. */

import { type Evidence, findingEvidence, type Subject } from "../patterns/index.ts";
import { findingsOf, isLesion } from "../record/index.ts";
import type { Fit } from "./fit.ts";
import { placeKey } from "./place-key.ts";
import { casesOf } from "./statements.ts";

export interface Unexplained {
  readonly lesion: Evidence;
  /** What explains it, the best first. */
  readonly by: readonly Fit[];
}

export function unexplained(subject: Subject, [first, ...others]: readonly Fit[]): Unexplained[] {
  return casesOf(subject).flatMap((one) =>
    findingsOf(one)
      .filter(({ finding }) => isLesion(finding))
      .map((placed) => findingEvidence(placed, one))
      .filter((lesion) => first === undefined || !explains(first, lesion))
      .map((lesion) => ({ lesion, by: others.filter((fit) => explains(fit, lesion)) })),
  );
}

const explains = ({ places, otherForms }: Fit, lesion: Evidence): boolean =>
  places.has(placeKey(lesion)) || otherForms.some((form) => explains(form, lesion));
