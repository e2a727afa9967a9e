/** Rules of the family completeness, in the order of the documentation. */
import type { Rule } from "../../rule.ts";
import { brainUnseen } from "./brain-unseen.ts";
import { coughLungsUnseen } from "./cough-lungs-unseen.ts";
import { entericGutUnseen } from "./enteric-gut-unseen.ts";
import { feverNodesUnseen } from "./fever-nodes-unseen.ts";
import { lamePigJoints } from "./lame-pig-joints.ts";
import { lobeMissing } from "./lobe-missing.ts";
import { mesentericRootUnpalpated } from "./mesenteric-root-unpalpated.ts";
import { nasalSignsTurbinatesUnseen } from "./nasal-signs-turbinates-unseen.ts";
import { notAssessableWithoutCause } from "./not-assessable-without-cause.ts";
import { notExaminedWithoutReason } from "./not-examined-without-reason.ts";
import { observationMissing } from "./observation-missing.ts";
import { parsOesophageaUnseen } from "./pars-oesophagea-unseen.ts";
import { sideMissing } from "./side-missing.ts";
import { skippedOrgan } from "./skipped-organ.ts";
import { skippedSystem } from "./skipped-system.ts";
import { valvesUnseen } from "./valves-unseen.ts";

export const completenessRules: readonly Rule[] = [
  skippedSystem,
  skippedOrgan,
  notExaminedWithoutReason,
  notAssessableWithoutCause,
  sideMissing,
  lobeMissing,
  observationMissing,
  lamePigJoints,
  parsOesophageaUnseen,
  mesentericRootUnpalpated,
  feverNodesUnseen,
  nasalSignsTurbinatesUnseen,
  valvesUnseen,
  brainUnseen,
  entericGutUnseen,
  coughLungsUnseen,
];
