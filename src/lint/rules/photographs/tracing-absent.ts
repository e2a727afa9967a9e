import { isAbsent, tracings } from "../../../record/index.ts";

import type { CaseRule } from "../../rule.ts";

export const tracingAbsent: CaseRule = {
  id: "tracing-absent",
  scope: "case",
  family: "photographs",
  level: "error",
  summary: "Every tracing that a case names lies where it says.",
  protects: "Areas are measured from the tracing; without the file the ratio cannot be had again.",
  source: { cite: "common practice of filing", confidence: "common-practice" },
  bad: { case: "respiratory: {turbinates: {tracing: tracings/pig-01.svg}}" },
  good: {
    case: "respiratory: {turbinates: {tracing: tracings/pig-01.svg}}",
    files: ["tracings/pig-01.svg"],
  },
  check(one, report) {
    for (const { file, path } of tracings(one))
      if (isAbsent(one, file))
        report(
          `there is no tracing ${file} beside this case. Copy it there, or correct the name; the path starts at the folder of the case.`,
          path,
        );
  },
};
