/** Rules on timing: what autolysis leaves of a test, and the order of the steps at the table. Part of the list in rules/index.ts. */

import type { Rule } from "../../rule.ts";
import { holdBack, whileTimesHold } from "../../shared/silence.ts";
import { afterGutOpened } from "./after-gut-opened.ts";
import { autolysedGutNormal } from "./autolysed-gut-normal.ts";
import { carcassStateImplausible } from "./carcass-state-implausible.ts";
import { carcassStorageUnstated } from "./carcass-storage-unstated.ts";
import { frozenCarcassHistology } from "./frozen-carcass-histology.ts";
import { gutFixedAfterOpening } from "./gut-fixed-after-opening.ts";
import { gutNotFixedFirst } from "./gut-not-fixed-first.ts";
import { gutPastTarget } from "./gut-past-target.ts";
import { gutTimeMissing } from "./gut-time-missing.ts";
import { jointSwabAfterFixing } from "./joint-swab-after-fixing.ts";
import { lateFluid } from "./late-fluid.ts";
import { lateGut } from "./late-gut.ts";
import { lateTests } from "./late-tests.ts";
import { meningealSwabLate } from "./meningeal-swab-late.ts";

const rules: readonly Rule[] = [
  ...lateGut.map(whileTimesHold),
  whileTimesHold(gutPastTarget),
  gutTimeMissing,
  ...lateTests.map(whileTimesHold),
  frozenCarcassHistology,
  whileTimesHold(carcassStateImplausible),
  autolysedGutNormal,
  whileTimesHold(carcassStorageUnstated),
  ...lateFluid,
  meningealSwabLate,
  ...afterGutOpened,
  gutFixedAfterOpening,
  gutNotFixedFirst,
  jointSwabAfterFixing,
];

export const timingRules: readonly Rule[] = rules.map(holdBack);
