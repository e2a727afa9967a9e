/** Rules of the family completeness, in the order of the documentation. */
import type { Rule } from "../../rule.ts";
import { lamePigJoints } from "./lame-pig-joints.ts";
import { lobeMissing } from "./lobe-missing.ts";
import { notAssessableWithoutCause } from "./not-assessable-without-cause.ts";
import { notExaminedWithoutReason } from "./not-examined-without-reason.ts";
import { observationMissing } from "./observation-missing.ts";
import { sideMissing } from "./side-missing.ts";
import { skippedOrgan } from "./skipped-organ.ts";
import { skippedSystem } from "./skipped-system.ts";
import { suspectOrganRules } from "./suspect-organs.ts";

export const completenessRules: readonly Rule[] = [
  skippedSystem,
  skippedOrgan,
  notExaminedWithoutReason,
  notAssessableWithoutCause,
  sideMissing,
  lobeMissing,
  observationMissing,
  lamePigJoints,
  ...suspectOrganRules,
];
