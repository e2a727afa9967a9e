import { conchae, stainedByDust } from "../../../record/index.ts";
import { type CaseRule, practice } from "../../rule.ts";

export const boneDustLeft: CaseRule = {
  id: "bone-dust-left",
  scope: "case",
  family: "scoring",
  level: "warning",
  summary: "Bone dust is washed off the cut face before the conchae are scored.",
  protects: "Dust fills the meatus, hides the edges of the scrolls and stains them yellow.",
  lookAlike:
    "A face that was washed after the score was read: read it again, and write cut_face: washed with the grade of the second look.",
  source: practice("common practice of snout scoring: the cut face is washed before it is judged"),
  bad: { case: "respiratory: {turbinates: {cut_face: bone-dust}}" },
  good: { case: "respiratory: {turbinates: {cut_face: washed}}" },
  check(one, report) {
    const nose = conchae(one);
    if (nose?.cut_face === "bone-dust" && stainedByDust(one) === undefined)
      report(
        "respiratory.turbinates.cut_face: bone dust was left on the cut face. Wash it, look again and write cut_face: washed; a yellow stain is an artefact of the saw.",
        [...nose.path, "cut_face"],
      );
  },
};
