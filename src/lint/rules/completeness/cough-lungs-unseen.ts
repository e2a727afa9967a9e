import { notExamined } from "../../../record/index.ts";
import type { CaseRule } from "../../rule.ts";

export const coughLungsUnseen: CaseRule = {
  id: "cough-lungs-unseen",
  scope: "case",
  family: "completeness",
  level: "warning",
  summary: "In a pig that coughs or breathes hard the lungs and their nodes are looked at.",
  protects: "The complaint is in the chest; a reason for leaving the lungs does not answer it.",
  source: { cite: "common practice", confidence: "common-practice" },
  bad: { case: "lymphoid: {bronchial_nodes: {not_examined: cut away with the pluck}}" },
  good: { case: "lymphoid: {bronchial_nodes: normal}" },
  check(one, report) {
    const sign = one.signs.find((word) => word === "cough" || word === "dyspnoea");
    if (sign === undefined) return;
    for (const organ of notExamined(one, [
      "respiratory.lungs",
      "respiratory.pleura",
      "lymphoid.bronchial_nodes",
    ]))
      report(
        `${organ.id}: not examined, in a pig with ${sign}. Look at it, or say in the diagnosis what that leaves open.`,
        one.organ(organ).path,
      );
  },
};
