/** Every rule, family by family. The lists are explicit: a rule that is in none of them does not exist. */
import type { Rule } from "../rule.ts";
import { alarmRules } from "./alarm/index.ts";
import { completenessRules } from "./completeness/index.ts";
import { consistencyRules } from "./consistency/index.ts";
import { descriptionRules } from "./description/index.ts";
import { diagnosisRules } from "./diagnosis/index.ts";
import { formatRules } from "./format/index.ts";
import { historyRules } from "./history/index.ts";
import { packagingRules } from "./packaging/index.ts";
import { photographsRules } from "./photographs/index.ts";
import { safetyRules } from "./safety/index.ts";
import { samplingRules } from "./sampling/index.ts";
import { scoringRules } from "./scoring/index.ts";
import { selectionRules } from "./selection/index.ts";
import { timingRules } from "./timing/index.ts";
import { visitRules } from "./visit/index.ts";

export const rules: readonly Rule[] = [
  ...completenessRules,
  ...selectionRules,
  ...historyRules,
  ...timingRules,
  ...descriptionRules,
  ...consistencyRules,
  ...scoringRules,
  ...samplingRules,
  ...packagingRules,
  ...safetyRules,
  ...alarmRules,
  ...diagnosisRules,
  ...visitRules,
  ...photographsRules,
  ...formatRules,
];
