/** The real lesions of a case: findings of some processes, without those called artefacts. */
import type { Case, Finding } from "../cases/index.ts";
import { findingsOf, type PlacedFinding } from "./findings-of.ts";

export interface LesionQuestion {
  readonly processes: readonly Finding["process"][];
  /** Systems or organs to look at; all when left out. */
  readonly within?: readonly string[];
}

export function lesions(one: Case, { processes, within }: LesionQuestion): PlacedFinding[] {
  return findingsOf(one).filter(
    ({ organ, finding }) =>
      processes.includes(finding.process) &&
      finding.certainty !== "artefact" &&
      (within === undefined || within.includes(organ.id) || within.includes(organ.system)),
  );
}
