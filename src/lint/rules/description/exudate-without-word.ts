import { formatPath } from "../../../cases/index.ts";
import { description } from "../../../knowledge/index.ts";
import { findingsOf } from "../../../record/index.ts";
import type { CaseRule } from "../../rule.ts";

export const exudateWithoutWord: CaseRule = {
  id: "exudate-without-word",
  scope: "case",
  family: "description",
  level: "warning",
  summary: "An effusion, a discharge or an exudate says what kind it is.",
  protects: "Serous, fibrinous and suppurative come from different causes; fluid of no kind points nowhere.",
  source: description.source,
  bad: { case: "cardiovascular: {pericardium: [{process: effusion, distribution: diffuse, volume: 15 ml}]}" },
  good: {
    case: "cardiovascular: {pericardium: [{process: effusion, distribution: diffuse, volume: 15 ml, exudate: fibrinous}]}",
  },
  check(one, report) {
    for (const { finding, path } of findingsOf(one))
      if (description.needs.exudate.includes(finding.process) && finding.exudate === undefined)
        report(
          `${formatPath(path)}: what kind of ${finding.process}? Write exudate: serous, catarrhal, fibrinous, suppurative, haemorrhagic …`,
          path,
        );
  },
};
