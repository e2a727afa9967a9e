import { formatPath } from "../../../cases/index.ts";
import { lesions, notExamined } from "../../../record/index.ts";

import type { CaseRule } from "../../rule.ts";

export const mesentericRootUnpalpated: CaseRule = {
  id: "mesenteric-root-unpalpated",
  scope: "case",
  family: "completeness",
  level: "warning",
  summary: "Where the intestine is bloody or twisted, the mesenteric root is palpated.",
  protects:
    "Only the root tells a twisted gut from a haemorrhagic bowel, and it must be felt before the gut is moved.",
  source: { cite: "Straw et al. 2002, J Swine Health Prod 10:75-79", confidence: "verified" },
  bad: {
    case: "intestine: {jejunum: [{process: haemorrhage, distribution: diffuse, extent: 90 %, colour: dark-red}], mesentery: {not_examined: gut already out}}",
  },
  good: {
    case: "intestine: {jejunum: [{process: haemorrhage, distribution: diffuse, extent: 90 %, colour: dark-red}], mesentery: normal}",
  },
  check(one, report) {
    const [organ] = notExamined(one, ["intestine.mesentery"]);
    const [lesion] = lesions(one, {
      processes: ["haemorrhage", "congestion", "torsion", "displacement", "infarct"],
      within: ["intestine"],
    });
    if (organ === undefined || lesion === undefined) return;
    report(
      `intestine.mesentery: not examined, yet ${formatPath(lesion.path)} shows ${lesion.finding.process}. Torsion cannot be ruled out for this pig: say so in the diagnosis, and palpate the root before the gut is moved in the next one.`,
      one.organ(organ).path,
    );
  },
};
