/** Rules of the family diagnosis, in the order of the documentation. */
import type { Rule } from "../../rule.ts";
import { causeWithoutDifferentials } from "./cause-without-differentials.ts";
import { causeWithoutLaboratory } from "./cause-without-laboratory.ts";
import { diagnosisAgainstLobes } from "./diagnosis-against-lobes.ts";
import { diagnosisAgainstSeverity } from "./diagnosis-against-severity.ts";
import { formsOfDiagnosis } from "./forms-of-diagnosis.ts";
import { markedLesionUndiagnosed } from "./marked-lesion-undiagnosed.ts";
import { pendingAgainstBasis } from "./pending-against-basis.ts";
import { pendingWithoutSample } from "./pending-without-sample.ts";
import { progressiveWithoutToxin } from "./progressive-without-toxin.ts";
import { wordsInDescriptions } from "./words-in-descriptions.ts";

export const diagnosisRules: readonly Rule[] = [
  ...formsOfDiagnosis,
  causeWithoutLaboratory,
  causeWithoutDifferentials,
  progressiveWithoutToxin,
  pendingAgainstBasis,
  pendingWithoutSample,
  ...wordsInDescriptions,
  markedLesionUndiagnosed,
  diagnosisAgainstSeverity,
  diagnosisAgainstLobes,
];
