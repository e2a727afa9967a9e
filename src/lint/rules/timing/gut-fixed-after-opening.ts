import { isAfter } from "../../../cases/index.ts";
import { stepAt } from "../../../sampling/index.ts";
import type { CaseRule } from "../../rule.ts";

export const gutFixedAfterOpening: CaseRule = {
  id: "gut-fixed-after-opening",
  scope: "case",
  family: "timing",
  level: "warning",
  summary: "Gut for histology is cut out closed, before the gut is opened.",
  protects:
    "Running fingers, scissors and water along an opened gut strip the villi that histology is to read.",
  source: {
    cite: "closed pieces first, lumen last: Animal Health Laboratory, University of Guelph; order of this project",
    confidence: "common-practice",
  },
  bad: {
    case: "steps: {gut_opened: 2026-04-20T09:20, gut_fixed: 2026-04-20T09:25}\nopened: {at: 2026-04-20T09:15}\nsamples: ",
  },
  good: {
    case: "steps: {gut_fixed: 2026-04-20T09:20, gut_opened: 2026-04-20T10:50}\nopened: {at: 2026-04-20T09:15}\nsamples: ",
  },
  check(one, report) {
    const opened = stepAt(one, "gut_opened");
    const fixed = stepAt(one, "gut_fixed");
    if (opened !== undefined && fixed !== undefined && isAfter(fixed, opened))
      report(
        `steps.gut_fixed: gut was fixed (${one.record.steps?.gut_fixed}) after it had been opened (${one.record.steps?.gut_opened}). Cut closed pieces out first, slit one end, fix them; open the rest at the very end.`,
        ["steps", "gut_fixed"],
      );
  },
};
