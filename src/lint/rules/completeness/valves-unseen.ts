import { formatPath } from "../../../cases/index.ts";
import { lesions, notExamined } from "../../../record/index.ts";

import type { CaseRule } from "../../rule.ts";

export const valvesUnseen: CaseRule = {
  id: "valves-unseen",
  scope: "case",
  family: "completeness",
  level: "warning",
  summary:
    "With infarcts in kidney, spleen or lung, and in an adult found dead, the heart valves are opened and looked at.",
  protects: "Endocarditis throws the emboli; the infarcts alone do not name their source.",
  source: { cite: "endocarditis and its emboli, standard texts", confidence: "from-memory" },
  bad: {
    case: "urinary: {kidneys: {left: [{process: infarct, distribution: multifocal, number: 3, size: 8 mm}], right: normal}}\ncardiovascular: {valves: {not_examined: heart not cut}}",
  },
  good: {
    case: "urinary: {kidneys: {left: [{process: infarct, distribution: multifocal, number: 3, size: 8 mm}], right: normal}}",
  },
  check(one, report) {
    const [organ] = notExamined(one, ["cardiovascular.valves"]);
    if (organ === undefined) return;
    const [embolic] = lesions(one, {
      processes: ["infarct", "thrombus"],
      within: ["urinary.kidneys", "lymphoid.spleen", "respiratory.lungs", "nervous.brain"],
    });
    const deadAdult = one.ageClass === "adult" && one.record.death?.manner === "found-dead";
    if (embolic !== undefined || deadAdult)
      report(
        `cardiovascular.valves: not examined, ${embolic === undefined ? "in an adult found dead" : `yet ${formatPath(embolic.path)} shows ${embolic.finding.process}`}. Open the heart with the flow of the blood and look at all four valves.`,
        one.organ(organ).path,
      );
  },
};
