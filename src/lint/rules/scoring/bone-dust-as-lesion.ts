import { formatPath } from "../../../cases/index.ts";
import { conchae, stainedByDust } from "../../../record/index.ts";
import { type CaseRule, practice } from "../../rule.ts";

export const boneDustAsLesion: CaseRule = {
  id: "bone-dust-as-lesion",
  scope: "case",
  family: "scoring",
  level: "error",
  summary: "The yellow stain of bone dust is not described as a lesion.",
  protects: "The saw makes it; as a finding it becomes a rhinitis that the pig never had.",
  lookAlike:
    "Yellow pus or a yellow membrane that stays after washing: write cut_face: washed, and it is a lesion like any other.",
  source: practice("common practice of snout scoring: the cut face is washed before it is judged"),
  bad: {
    case: "respiratory: {turbinates: {cut_face: bone-dust, findings: [{process: discolouration, distribution: diffuse, extent: 80 %, colour: yellow}]}}",
  },
  good: {
    case: "respiratory: {turbinates: {cut_face: washed, findings: [{process: discolouration, distribution: diffuse, extent: 80 %, colour: yellow}]}}",
  },
  check(one, report) {
    if (conchae(one)?.cut_face !== "bone-dust") return;
    const stain = stainedByDust(one);
    if (stain !== undefined)
      report(
        `${formatPath(stain.path)}: ${stain.finding.colour} ${stain.finding.process} under bone dust is an artefact of the saw. Wash the face and look again; delete the finding, or write certainty: artefact.`,
        stain.path,
      );
  },
};
