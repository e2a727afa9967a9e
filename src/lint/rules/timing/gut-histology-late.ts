import { autolysis } from "../../../knowledge/index.ts";
import type { CaseRule } from "../../rule.ts";
import { lateGut, lateness } from "../../shared/late-tests.ts";

export const gutHistologyLate: CaseRule = {
  id: "gut-histology-late",
  scope: "case",
  family: "timing",
  level: "warning",
  trustsTimes: true,
  summary: "Gut for histology is fixed within the limit for its temperature.",
  protects:
    "Villus tips slough after 20 to 30 minutes: attaching bacteria, coccidia and atrophy can no longer be read.",
  source: autolysis.kinds["gut-histology"]?.source ?? autolysis.source,
  bad: {
    case: "samples: [{id: 01-A, from: intestine.jejunum, into: formalin, for: [histology], at: 2026-04-20T09:55}]",
  },
  good: {
    case: "samples: [{id: 01-A, from: intestine.jejunum, into: formalin, for: [histology], at: 2026-04-20T09:40}]",
  },
  check(one, report) {
    for (const found of lateGut(one, ["reduced"]))
      report(
        `samples[${found.index}].for: gut ${found.sample.id} was fixed ${lateness(one, found)}: read its villi with care. Of the next pig cut closed pieces out and fix them first.`,
        ["samples", found.index, "for"],
      );
  },
};
