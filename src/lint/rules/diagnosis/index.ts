/** Rules of the family diagnosis, in the order of the documentation. */
import type { Rule } from "../../rule.ts";
import { causeWithoutDifferentials } from "./cause-without-differentials.ts";
import { causeWithoutLaboratory } from "./cause-without-laboratory.ts";
import { diagnosisAgainstLobes } from "./diagnosis-against-lobes.ts";
import { diagnosisAgainstSeverity } from "./diagnosis-against-severity.ts";
import { diagnosisWithoutDegree } from "./diagnosis-without-degree.ts";
import { diagnosisWithoutLesion } from "./diagnosis-without-lesion.ts";
import { diagnosisWithoutOrgan } from "./diagnosis-without-organ.ts";
import { diseaseAsLesion } from "./disease-as-lesion.ts";
import { interpretationInDescription } from "./interpretation-in-description.ts";
import { markedLesionUndiagnosed } from "./marked-lesion-undiagnosed.ts";
import { pendingAgainstBasis } from "./pending-against-basis.ts";
import { pendingWithoutSample } from "./pending-without-sample.ts";
import { progressiveWithoutToxin } from "./progressive-without-toxin.ts";
import { simileInDescription } from "./simile-in-description.ts";

export const diagnosisRules: readonly Rule[] = [
  diagnosisWithoutOrgan,
  diagnosisWithoutDegree,
  diagnosisWithoutLesion,
  diseaseAsLesion,
  causeWithoutLaboratory,
  causeWithoutDifferentials,
  progressiveWithoutToxin,
  pendingAgainstBasis,
  pendingWithoutSample,
  interpretationInDescription,
  simileInDescription,
  markedLesionUndiagnosed,
  diagnosisAgainstSeverity,
  diagnosisAgainstLobes,
];
