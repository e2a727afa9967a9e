/** Rules of the family history, in the order of the documentation. */
import type { Rule } from "../../rule.ts";
import { airUnread } from "./air-unread.ts";
import { complaintMissing } from "./complaint-missing.ts";
import { coughCountImplausible } from "./cough-count-implausible.ts";
import { factMissing } from "./fact-missing.ts";
import { groupCountsImpossible } from "./group-counts-impossible.ts";
import { groupCountsMissing } from "./group-counts-missing.ts";
import { groupDeadUnaffected } from "./group-dead-unaffected.ts";
import { groupLargerThanFarm } from "./group-larger-than-farm.ts";
import { groupOnsetAfterVisit } from "./group-onset-after-visit.ts";
import { groupOnsetMissing } from "./group-onset-missing.ts";
import { groupOnsetYear } from "./group-onset-year.ts";
import { lastSeenAliveMissing } from "./last-seen-alive-missing.ts";
import { readingImplausible } from "./reading-implausible.ts";
import { readingOffVisit } from "./reading-off-visit.ts";
import { treatmentsMissing } from "./treatments-missing.ts";
import { vaccinationsMissing } from "./vaccinations-missing.ts";
import { veterinarianMissing } from "./veterinarian-missing.ts";
import { visitDateImpossible } from "./visit-date-impossible.ts";
import { visitDateOffFolder } from "./visit-date-off-folder.ts";
import { visitGroupUnknown } from "./visit-group-unknown.ts";

export const historyRules: readonly Rule[] = [
  factMissing,
  complaintMissing,
  veterinarianMissing,
  treatmentsMissing,
  vaccinationsMissing,
  groupCountsMissing,
  groupOnsetMissing,
  groupCountsImpossible,
  groupDeadUnaffected,
  coughCountImplausible,
  groupLargerThanFarm,
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
