import { formatPath } from "../../../cases/index.ts";
import { hasMeasure, placedStates } from "../../../record/index.ts";

import type { CaseRule } from "../../rule.ts";

export const enlargementUnmeasured: CaseRule = {
  id: "enlargement-unmeasured",
  scope: "case",
  family: "description",
  level: "warning",
  summary: "An enlarged or shrunken organ is measured or weighed.",
  protects: "Enlarged is an opinion until there are millimetres or grams beside it.",
  source: {
    cite: "common practice in the necropsy room: an enlarged organ is measured or weighed",
    confidence: "common-practice",
  },
  bad: {
    case: "lymphoid: {spleen: [{process: enlargement, distribution: diffuse, extent: 100 %, severity: moderate}]}",
  },
  good: {
    case: "lymphoid: {spleen: {weight: 95 g, findings: [{process: enlargement, distribution: diffuse, extent: 100 %, severity: moderate}]}}",
  },
  check(one, report) {
    for (const {
      state: { entry, findings },
    } of placedStates(one))
      for (const { finding, path } of findings)
        if (
          finding.process === "enlargement" &&
          hasMeasure(finding) &&
          finding.size === undefined &&
          entry?.weight === undefined &&
          entry?.size === undefined
        )
          report(
            `${formatPath(path)}: how large is it? Write size: 30 x 20 mm in the finding, or the weight of the organ.`,
            path,
          );
  },
};
