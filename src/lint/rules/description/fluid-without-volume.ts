import { formatPath } from "../../../cases/index.ts";
import { description } from "../../../knowledge/index.ts";
import { findingsOf, hasMeasure } from "../../../record/index.ts";

import type { CaseRule } from "../../rule.ts";

export const fluidWithoutVolume: CaseRule = {
  id: "fluid-without-volume",
  scope: "case",
  family: "description",
  level: "warning",
  summary: "An effusion or a discharge has a volume.",
  protects:
    "A spoonful of clear fluid in a cavity is normal and a cupful is not; without millilitres nobody can tell.",
  source: description.source,
  bad: {
    case: "cardiovascular: {pericardium: [{process: effusion, distribution: diffuse, extent: 100 %, exudate: serous}]}",
  },
  good: {
    case: "cardiovascular: {pericardium: [{process: effusion, distribution: diffuse, volume: 15 ml, exudate: serous}]}",
  },
  check(one, report) {
    for (const { finding, path } of findingsOf(one))
      if (
        description.needs.volume.includes(finding.process) &&
        hasMeasure(finding) &&
        finding.volume === undefined
      )
        report(
          `${formatPath(path)}: how much ${finding.process}? Measure or estimate it and write volume: 15 ml.`,
          path,
        );
  },
};
