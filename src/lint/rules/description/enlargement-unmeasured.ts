import { formatPath } from "../../../cases/index.ts";
import { findingsOf, hasMeasure } from "../../../record/index.ts";
import { type CaseRule, practice } from "../../rule.ts";

export const enlargementUnmeasured: CaseRule = {
  id: "enlargement-unmeasured",
  scope: "case",
  family: "description",
  level: "warning",
  summary: "An enlarged or shrunken organ is measured or weighed.",
  protects: "Enlarged is an opinion until there are millimetres or grams beside it.",
  source: practice("common practice in the necropsy room: an enlarged organ is measured or weighed"),
  bad: {
    case: "lymphoid: {spleen: [{process: enlargement, distribution: diffuse, extent: 100 %, severity: moderate}]}",
  },
  good: {
    case: "lymphoid: {spleen: {weight: 95 g, findings: [{process: enlargement, distribution: diffuse, extent: 100 %, severity: moderate}]}}",
  },
  check(one, report) {
    for (const { finding, path, state } of findingsOf(one)) {
      if (finding.process !== "enlargement" || finding.size !== undefined || !hasMeasure(finding)) continue;
      if (state.entry?.weight === undefined && state.entry?.size === undefined)
        report(
          `${formatPath(path)}: how large is it? Write size: 30 x 20 mm in the finding, or the weight of the organ.`,
          path,
        );
    }
  },
};
