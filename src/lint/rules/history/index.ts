/** Rules of the family history, in the order of the documentation. */
import type { Rule } from "../../rule.ts";
import { airUnread } from "./air-unread.ts";
import { factMissing } from "./fact-missing.ts";
import { groupCountRules } from "./group-counts.ts";
import { groupCountsMissing } from "./group-counts-missing.ts";
import { groupOnsetAfterVisit } from "./group-onset-after-visit.ts";
import { groupOnsetMissing } from "./group-onset-missing.ts";
import { groupOnsetYear } from "./group-onset-year.ts";
import { lastSeenAliveMissing } from "./last-seen-alive-missing.ts";
import { readingImplausible } from "./reading-implausible.ts";
import { readingOffVisit } from "./reading-off-visit.ts";
import { visitDateImpossible } from "./visit-date-impossible.ts";
import { visitDateOffFolder } from "./visit-date-off-folder.ts";
import { visitGroupUnknown } from "./visit-group-unknown.ts";
import { visitMissing } from "./visit-missing.ts";

export const historyRules: readonly Rule[] = [
  factMissing,
  ...visitMissing,
  groupCountsMissing,
  groupOnsetMissing,
  ...groupCountRules,
  visitGroupUnknown,
  airUnread,
  readingOffVisit,
  readingImplausible,
  visitDateImpossible,
  visitDateOffFolder,
  groupOnsetAfterVisit,
  groupOnsetYear,
  lastSeenAliveMissing,
];
