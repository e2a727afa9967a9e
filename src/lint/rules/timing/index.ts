/** Rules on timing: what autolysis leaves of a test, and the order of the steps at the table. Part of the list in rules/index.ts. */

import type { Rule } from "../../rule.ts";
import { holdBack, whileTimesHold } from "../../shared/silence.ts";
import { autolysedGutNormal } from "./autolysed-gut-normal.ts";
import { carcassStateImplausible } from "./carcass-state-implausible.ts";
import { carcassStorageUnstated } from "./carcass-storage-unstated.ts";
import { csfAfterBrainOut } from "./csf-after-brain-out.ts";
import { csfAfterHeadOff } from "./csf-after-head-off.ts";
import { cultureAfterGutOpened } from "./culture-after-gut-opened.ts";
import { cultureLate } from "./culture-late.ts";
import { frozenCarcassHistology } from "./frozen-carcass-histology.ts";
import { gutFixedAfterOpening } from "./gut-fixed-after-opening.ts";
import { gutHistologyLate } from "./gut-histology-late.ts";
import { gutHistologyLost } from "./gut-histology-lost.ts";
import { gutNotFixedFirst } from "./gut-not-fixed-first.ts";
import { gutOpenedEarly } from "./gut-opened-early.ts";
import { gutPastTarget } from "./gut-past-target.ts";
import { gutTimeMissing } from "./gut-time-missing.ts";
import { histologyLate } from "./histology-late.ts";
import { jointSwabAfterFixing } from "./joint-swab-after-fixing.ts";
import { meningealSwabLate } from "./meningeal-swab-late.ts";
import { pcrLate } from "./pcr-late.ts";
import { sterileAfterGutOpened } from "./sterile-after-gut-opened.ts";
import { toxicologyLate } from "./toxicology-late.ts";

const rules: readonly Rule[] = [
  whileTimesHold(gutHistologyLate),
  whileTimesHold(gutHistologyLost),
  whileTimesHold(gutPastTarget),
  gutTimeMissing,
  whileTimesHold(histologyLate),
  whileTimesHold(cultureLate),
  whileTimesHold(pcrLate),
  whileTimesHold(toxicologyLate),
  frozenCarcassHistology,
  whileTimesHold(carcassStateImplausible),
  autolysedGutNormal,
  whileTimesHold(carcassStorageUnstated),
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
