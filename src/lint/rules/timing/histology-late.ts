import { autolysis } from "../../../knowledge/index.ts";
import type { CaseRule } from "../../rule.ts";
import { reportLate } from "../../shared/late-tests.ts";

export const histologyLate: CaseRule = {
  id: "histology-late",
  scope: "case",
  family: "timing",
  level: "warning",
  trustsTimes: true,
  summary: "Tissue for histology is fixed before autolysis hides the lesion.",
  protects:
    "Autolysis takes the nuclei first in liver, kidney and brain; necrosis and autolysis then look alike.",
  source: autolysis.source,
  bad: {
    case: "death: {at: 2026-04-19T19:10}\nopened: {at: 2026-04-20T09:40, ambient: 14 °C, state: fresh, note: lay in the cold passage overnight}\nsamples: [{id: 01-A, from: liver_pancreas.liver, into: formalin, for: [histology], at: 2026-04-20T09:50}]",
  },
  good: {
    case: "death: {at: 2026-04-19T23:10}\nopened: {at: 2026-04-20T09:40, ambient: 14 °C, state: fresh}\nsamples: [{id: 01-A, from: liver_pancreas.liver, into: formalin, for: [histology], at: 2026-04-20T09:50}]",
  },
  check(one, report) {
    reportLate(one, report, "histology");
  },
};
