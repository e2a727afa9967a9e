/** Rules on timing: what autolysis leaves of a test, and the order of the steps at the table. Part of the list in rules/index.ts. */
import { holdBack } from "./hold-back.ts";
import type { Rule } from "./rule.ts";
import { autolysedGutNormal } from "./rules/autolysed-gut-normal.ts";
import { carcassStateImplausible } from "./rules/carcass-state-implausible.ts";
import { carcassStorageUnstated } from "./rules/carcass-storage-unstated.ts";
import { csfAfterBrainOut } from "./rules/csf-after-brain-out.ts";
import { csfAfterHeadOff } from "./rules/csf-after-head-off.ts";
import { cultureAfterGutOpened } from "./rules/culture-after-gut-opened.ts";
import { cultureLate } from "./rules/culture-late.ts";
import { frozenCarcassHistology } from "./rules/frozen-carcass-histology.ts";
import { gutFixedAfterOpening } from "./rules/gut-fixed-after-opening.ts";
import { gutHistologyLate } from "./rules/gut-histology-late.ts";
import { gutHistologyLost } from "./rules/gut-histology-lost.ts";
import { gutNotFixedFirst } from "./rules/gut-not-fixed-first.ts";
import { gutOpenedEarly } from "./rules/gut-opened-early.ts";
import { gutPastTarget } from "./rules/gut-past-target.ts";
import { gutTimeMissing } from "./rules/gut-time-missing.ts";
import { histologyLate } from "./rules/histology-late.ts";
import { jointSwabAfterFixing } from "./rules/joint-swab-after-fixing.ts";
import { meningealSwabLate } from "./rules/meningeal-swab-late.ts";
import { pcrLate } from "./rules/pcr-late.ts";
import { sterileAfterGutOpened } from "./rules/sterile-after-gut-opened.ts";
import { toxicologyLate } from "./rules/toxicology-late.ts";

const rules: readonly Rule[] = [
  gutHistologyLate,
  gutHistologyLost,
  gutPastTarget,
  gutTimeMissing,
  histologyLate,
  cultureLate,
  pcrLate,
  toxicologyLate,
  frozenCarcassHistology,
  carcassStateImplausible,
  autolysedGutNormal,
  carcassStorageUnstated,
  csfAfterHeadOff,
  csfAfterBrainOut,
  meningealSwabLate,
  sterileAfterGutOpened,
  cultureAfterGutOpened,
  gutOpenedEarly,
  gutFixedAfterOpening,
  gutNotFixedFirst,
  jointSwabAfterFixing,
];

export const timingRules: readonly Rule[] = rules.map(holdBack);
