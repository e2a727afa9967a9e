import { formatPath, quantity } from "../../../cases/index.ts";
import { plausible } from "../../../knowledge/index.ts";
import { lesions, notExamined } from "../../../record/index.ts";

import type { CaseRule } from "../../rule.ts";

const suspects = ["lymphoid.spleen", "lymphoid.gastrohepatic_nodes", "lymphoid.renal_nodes"];

export const feverNodesUnseen: CaseRule = {
  id: "fever-nodes-unseen",
  scope: "case",
  family: "completeness",
  level: "warning",
  summary:
    "In a pig with fever or haemorrhages the spleen and the gastrohepatic and renal nodes are looked at.",
  protects: "These are the organs in which swine fevers show first, and the ones most often left out.",
  source: {
    cite: "organs named for the suspicion of a swine fever: Commission Decision 2003/422/EC",
    confidence: "from-memory",
  },
  bad: { case: "pig: {temperature: 41.2 °C}\nlymphoid: {renal_nodes: {not_examined: not found}}" },
  good: { case: "pig: {temperature: 41.2 °C}\nlymphoid: {renal_nodes: normal}" },
  check(one, report) {
    const temperature = quantity("temperature", one.record.pig?.temperature);
    const fever =
      one.signs.includes("fever") || (temperature !== undefined && temperature >= plausible.fever);
    const [bleeding] = lesions(one, {
      processes: ["haemorrhage", "petechiae"],
      within: ["lymphoid", "urinary", "external.skin", "cardiovascular", "serosa", "respiratory.larynx"],
    });
    if (!fever && bleeding === undefined) return;
    const why = fever ? "fever" : `${bleeding?.finding.process} (${formatPath(bleeding?.path ?? [])})`;
    for (const organ of notExamined(one, suspects))
      report(
        `${organ.id}: not examined, in a pig with ${why}. Look at it before the carcass goes; swine fevers show here.`,
        one.organ(organ).path,
      );
  },
};
