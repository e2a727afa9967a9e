import { isAfter } from "../../../cases/index.ts";
import { isFixed, isForAgents, sampleAt, samplesOf, whereOf } from "../../../record/index.ts";
import { isOneName } from "../../../words/plain-name.ts";
import { type CaseRule, practice } from "../../rule.ts";

export const jointSwabAfterFixing: CaseRule = {
  id: "joint-swab-after-fixing",
  scope: "case",
  family: "timing",
  level: "error",
  summary: "A joint is swabbed before any of it goes into formalin.",
  protects: "After formalin the swab is sterile whatever was in the joint.",
  lookAlike:
    "Another joint of the same pig: name it under site in both samples (left hock, right stifle), and they are told apart.",
  source: practice("formalin kills what should grow; common practice"),
  bad: {
    case: "locomotor: {joints: {state: , opened: [left-hock], findings: [{process: inflammation, site: left hock, distribution: focal, size: 40 mm, severity: moderate}]}}\nsamples: [{id: 01-A, from: locomotor.joints, site: left hock, into: formalin, for: [histology], at: 2026-04-20T10:00}, {id: 01-B, from: locomotor.joints, site: left hock, into: charcoal-medium, for: [culture], at: 2026-04-20T10:10}]",
  },
  good: {
    case: "locomotor: {joints: {state: , opened: [left-hock], findings: [{process: inflammation, site: left hock, distribution: focal, size: 40 mm, severity: moderate}]}}\nsamples: [{id: 01-B, from: locomotor.joints, site: left hock, into: charcoal-medium, for: [culture], at: 2026-04-20T09:55}, {id: 01-A, from: locomotor.joints, site: left hock, into: formalin, for: [histology], at: 2026-04-20T10:00}]",
  },
  check(one, report) {
    if (one.record.samples === undefined) return;
    const joints = samplesOf(one).filter(({ sample }) => sample.from === "locomotor.joints");
    for (const { sample, index } of joints) {
      const at = sampleAt(one, sample);
      if (!isForAgents(sample) || at === undefined) continue;
      const before = joints.find(({ sample: other }) => {
        const fixed = sampleAt(one, other);
        const [here, there] = [whereOf(sample), whereOf(other)];
        const isSame = here === there || isOneName(here, there);
        return isFixed(other) && isSame && fixed !== undefined && isAfter(at, fixed);
      });
      if (before !== undefined)
        report(
          `samples[${index}].at: ${sample.id} was taken after ${before.sample.id} from the same joint went into formalin. Swab first; take another joint for culture, or name the joint under site if it was another one.`,
          ["samples", index, "at"],
        );
    }
  },
};
