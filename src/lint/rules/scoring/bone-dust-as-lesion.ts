import { formatPath } from "../../../cases/index.ts";
import { conchae, stainedByDust } from "../../../record/index.ts";

import type { CaseRule } from "../../rule.ts";

export const boneDustAsLesion: CaseRule = {
  id: "bone-dust-as-lesion",
  scope: "case",
  family: "scoring",
  level: "error",
  summary: "The yellow stain of bone dust is not described as a lesion.",
  protects: "It is made by the saw; as a finding it becomes a rhinitis that the pig never had.",
  source: { cite: "common practice", confidence: "common-practice" },
  bad: {
    case: "respiratory: {turbinates: {cut_face: bone-dust, findings: [{process: discolouration, distribution: diffuse, extent: 80 %, colour: yellow}]}}",
  },
  good: {
    case: "respiratory: {turbinates: {cut_face: washed, findings: [{process: discolouration, distribution: diffuse, extent: 80 %, colour: yellow}]}}",
  },
  check(one, report) {
    const nose = conchae(one);
    const stain = stainedByDust(one);
    if (nose?.cut_face === "bone-dust" && stain !== undefined)
      report(
        `${formatPath(stain.path)}: ${stain.finding.colour} ${stain.finding.process} under bone dust is an artefact of the saw. Wash the face and look again; take the finding out, or write certainty: artefact.`,
        stain.path,
      );
  },
};
