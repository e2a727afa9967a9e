import { autolysis } from "../../../knowledge/index.ts";
import type { CaseRule } from "../../rule.ts";
import { lateGut, lateness } from "../../shared/late-tests.ts";

export const gutHistologyLost: CaseRule = {
  id: "gut-histology-lost",
  scope: "case",
  family: "timing",
  level: "error",
  trustsTimes: true,
  summary: "Histology of gut is not asked of a pig that lay for hours.",
  protects:
    "After two hours, sooner in the heat, the upper half of the villi has no structure; a villus score of such gut is invented.",
  source: autolysis.kinds["gut-histology"]?.source ?? autolysis.source,
  bad: {
    case: "samples: [{id: 01-A, from: intestine.jejunum, into: formalin, for: [histology], at: 2026-04-20T12:10}]",
  },
  good: {
    case: "samples: [{id: 01-A, from: intestine.jejunum, into: chilled, for: [pcr], at: 2026-04-20T12:10}]",
  },
  check(one, report) {
    for (const found of lateGut(one, ["doubtful"]))
      report(
        `samples[${found.index}].for: gut ${found.sample.id} was fixed ${lateness(one, found)}; its villi cannot be read. Keep it for the deep wall, ask for PCR or culture of a chilled piece, and kill a pig for histology.`,
        ["samples", found.index, "for"],
      );
  },
};
