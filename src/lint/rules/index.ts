/** Every rule, in the order of the documentation. The list is explicit: a rule that is not here does not exist. */
import type { Rule } from "../rule.ts";
import { ageClassMismatch } from "./age-class-mismatch.ts";
import { alarmSignRecorded } from "./alarm-sign-recorded.ts";
import { brainDestroyed } from "./brain-destroyed.ts";
import { caseFormat } from "./case-format.ts";
import { caseNotInVisit } from "./case-not-in-visit.ts";
import { dateImpossible } from "./date-impossible.ts";
import { datesOutOfOrder } from "./dates-out-of-order.ts";
import { duplicateCase } from "./duplicate-case.ts";
import { duplicateTag } from "./duplicate-tag.ts";
import { factMissing } from "./fact-missing.ts";
import { findingWithoutDistribution } from "./finding-without-distribution.ts";
import { findingWithoutSize } from "./finding-without-size.ts";
import { gradeScaleUnknown } from "./grade-scale-unknown.ts";
import { groupUnknown } from "./group-unknown.ts";
import { lobeMissing } from "./lobe-missing.ts";
import { normalWithFinding } from "./normal-with-finding.ts";
import { notAssessableWithoutCause } from "./not-assessable-without-cause.ts";
import { notExaminedWithoutReason } from "./not-examined-without-reason.ts";
import { observationMissing } from "./observation-missing.ts";
import { observationOutOfRange } from "./observation-out-of-range.ts";
import { protocolUnknown } from "./protocol-unknown.ts";
import { selectionBasisMissing } from "./selection-basis-missing.ts";
import { sideMissing } from "./side-missing.ts";
import { signsMissing } from "./signs-missing.ts";
import { skippedOrgan } from "./skipped-organ.ts";
import { skippedSystem } from "./skipped-system.ts";
import { snoutSectionMissing } from "./snout-section-missing.ts";
import { snoutSectionRostral } from "./snout-section-rostral.ts";
import { treatedPig } from "./treated-pig.ts";
import { visitCaseAbsent } from "./visit-case-absent.ts";
import { weightImplausible } from "./weight-implausible.ts";

export const rules: readonly Rule[] = [
  skippedSystem,
  skippedOrgan,
  notExaminedWithoutReason,
  notAssessableWithoutCause,
  sideMissing,
  lobeMissing,
  observationMissing,
  factMissing,
  selectionBasisMissing,
  signsMissing,
  treatedPig,
  normalWithFinding,
  findingWithoutDistribution,
  findingWithoutSize,
  snoutSectionMissing,
  snoutSectionRostral,
  observationOutOfRange,
  gradeScaleUnknown,
  weightImplausible,
  ageClassMismatch,
  datesOutOfOrder,
  dateImpossible,
  brainDestroyed,
  groupUnknown,
  duplicateCase,
  duplicateTag,
  visitCaseAbsent,
  caseNotInVisit,
  alarmSignRecorded,
  caseFormat,
  protocolUnknown,
];
