import { isWeaned } from "../../../cases/index.ts";
import { signFamilies } from "../../../knowledge/index.ts";
import { lesions, notExamined } from "../../../record/index.ts";

import type { CaseRule } from "../../rule.ts";

const paleOn = ["external", "upper_digestive", "locomotor", "subcutis"];

export const parsOesophageaUnseen: CaseRule = {
  id: "pars-oesophagea-unseen",
  scope: "case",
  family: "completeness",
  level: "warning",
  summary: "In a pale pig, and in a grown pig found dead, the pars oesophagea is looked at.",
  protects:
    "A bleeding ulcer kills without a sign and is found only when the stomach is opened: 39 of 146 finishers dead in two weeks had died of one.",
  source: {
    cite: "PMC339211 (gastric ulcers in dead finishers, two weeks of necropsies)",
    confidence: "verified",
  },
  bad: {
    case: "selection: {signs: [pallor]}\nlocomotor: {bone_marrow: normal}\nstomach: {pars_oesophagea: {not_examined: stomach left closed}}",
  },
  good: { case: "selection: {signs: [pallor]}\nlocomotor: {bone_marrow: normal}" },
  check(one, report) {
    if (one.ageClass === undefined || !isWeaned(one.ageClass)) return;
    const [organ] = notExamined(one, ["stomach.pars_oesophagea"]);
    if (organ === undefined) return;
    const pale =
      signFamilies(one.signs).includes("anaemic") ||
      lesions(one, { processes: ["pallor"], within: paleOn }).length > 0;
    const dead = one.record.death?.manner === "found-dead" && one.ageClass !== "weaner";
    if (pale || dead)
      report(
        `stomach.pars_oesophagea: not examined, in a pig that was ${pale ? "pale" : "found dead"}. Open the stomach along the greater curvature, wash it and look; if it is gone, say so in the diagnosis.`,
        one.organ(organ).path,
      );
  },
};
