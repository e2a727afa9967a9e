import { isFixed, samplesOf } from "../../../sampling/index.ts";
import { isJointInQuestion } from "../../questions.ts";
import type { CaseRule } from "../../rule.ts";

export const jointOnlyFixed: CaseRule = {
  id: "joint-only-fixed",
  scope: "case",
  family: "sampling",
  level: "warning",
  summary: "Of an inflamed joint fluid or a swab is kept for culture or PCR, not only synovium in formalin.",
  protects: "A joint that is only fixed cannot be cultured, and the agent decides the treatment.",
  source: {
    cite: "Iowa State University, joint table (several joints, PCR, culture and histology of synovium); common practice",
    confidence: "common-practice",
  },
  bad: {
    case: "locomotor: {joints: {state: , opened: [left-hock], findings: [{process: inflammation, site: left hock, distribution: focal, size: 40 mm, severity: moderate}]}}\nsamples: [{id: 01-A, from: locomotor.joints, site: left hock, into: formalin, for: [histology], at: 2026-04-20T10:00}]",
  },
  good: {
    case: "locomotor: {joints: {state: , opened: [left-hock], findings: [{process: inflammation, site: left hock, distribution: focal, size: 40 mm, severity: moderate}]}}\nsamples: [{id: 01-B, from: locomotor.joints, site: left hock, into: charcoal-medium, for: [culture], at: 2026-04-20T09:50}, {id: 01-A, from: locomotor.joints, site: left hock, into: formalin, for: [histology], at: 2026-04-20T10:00}]",
  },
  check(one, report) {
    if (!isJointInQuestion(one)) return;
    const joints = samplesOf(one).filter(({ sample }) => sample.from === "locomotor.joints");
    const [first] = joints;
    if (first !== undefined && joints.every(({ sample }) => isFixed(sample)))
      report(
        `samples[${first.index}].into: the joint is only in formalin, and nothing can be grown from it. Take fluid with a sterile needle or a swab of another affected joint before that one is opened and fixed.`,
        ["samples", first.index, "into"],
      );
  },
};
