import { signFamilies } from "../../../knowledge/index.ts";
import { lesions, notExamined } from "../../../record/index.ts";

import type { CaseRule } from "../../rule.ts";

export const nasalSignsTurbinatesUnseen: CaseRule = {
  id: "nasal-signs-turbinates-unseen",
  scope: "case",
  family: "completeness",
  level: "warning",
  summary: "When a pig sneezes or its snout is crooked, the snout is sawn and the turbinates are looked at.",
  protects: "The complaint is in the nose; without a section the necropsy cannot answer it.",
  source: { cite: "common practice", confidence: "common-practice" },
  bad: {
    case: "respiratory: {turbinates: {state: , section: , left: , right: , septum: , grades: , loss_looks: , not_examined: no saw}}",
  },
  good: {
    case: "selection: {signs: [cough]}\nrespiratory: {turbinates: {state: , section: , left: , right: , septum: , grades: , loss_looks: , not_examined: no saw}}",
  },
  check(one, report) {
    const [organ] = notExamined(one, ["respiratory.turbinates"]);
    if (organ === undefined) return;
    const nasal = signFamilies(one.signs).includes("nasal");
    const [crooked] = lesions(one, { processes: ["deviation", "malformation"], within: ["external.snout"] });
    if (nasal || crooked !== undefined)
      report(
        `respiratory.turbinates: not examined, in a pig with ${nasal ? "nasal signs" : "a crooked snout"}. Take the head along and saw it behind the first upper premolar, at the corner of the mouth.`,
        one.organ(organ).path,
      );
  },
};
