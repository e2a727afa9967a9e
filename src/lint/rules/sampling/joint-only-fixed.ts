import type { Case } from "../../../cases/index.ts";
import { organById } from "../../../knowledge/index.ts";
import { isFixed, namedOrgans, type Sample, samplesOf } from "../../../record/index.ts";
import { type CaseRule, practice } from "../../rule.ts";
import { isInflamed, isJointInQuestion } from "../../shared/asked-of-laboratory.ts";

export const jointOnlyFixed: CaseRule = {
  id: "joint-only-fixed",
  scope: "case",
  family: "sampling",
  level: "warning",
  silent: "authority",
  summary:
    "From an inflamed joint fluid or a swab is kept for culture or PCR, not only synovium in formalin.",
  protects: "A joint that is only fixed cannot be cultured, and the agent decides the treatment.",
  lookAlike:
    "Fluid of the same joint that was cultured in another sample is enough. A deformed joint without inflammation, or one that was looked at and normal, is not asked about.",
  source: practice(
    "Iowa State University, joint table (several joints, PCR, culture and histology of synovium); common practice",
  ),
  bad: {
    case: "locomotor: {joints: {state: , opened: [left-hock], findings: [{process: inflammation, site: left hock, distribution: focal, size: 40 mm, severity: moderate}]}}\nsamples: [{id: 01-A, from: locomotor.joints, site: left hock, into: formalin, for: [histology], at: 2026-04-20T10:00}]",
  },
  good: {
    case: "locomotor: {joints: {state: , opened: [left-hock], findings: [{process: inflammation, site: left hock, distribution: focal, size: 40 mm, severity: moderate}]}}\nsamples: [{id: 01-B, from: locomotor.joints, site: left hock, into: charcoal-medium, for: [culture], at: 2026-04-20T09:50}, {id: 01-A, from: locomotor.joints, site: left hock, into: formalin, for: [histology], at: 2026-04-20T10:00}]",
  },
  check(one, report) {
    if (one.record.samples === undefined) return;
    const joints = samplesOf(one).filter(({ sample }) => isOfJoint(sample));
    const [first] = joints;
    if (first === undefined || !joints.every(({ sample }) => isFixed(sample))) return;
    if (isInflamed(one, ["locomotor.joints"]) || isLameUnexamined(one))
      report(
        `samples[${first.index}].into: the joint is only in ${first.sample.into}, and nothing can be grown from it. From the next affected joint take fluid with a sterile needle, or a swab, before any of it is fixed.`,
        ["samples", first.index, "into"],
      );
  },
};

/** A joint, or the locomotor system where the site does not name another part of it. */
function isOfJoint({ from, site }: Sample): boolean {
  if (from !== "locomotor") return from === "locomotor.joints";
  const named = namedOrgans(site ?? "");
  return named.length === 0 || named.some(({ id }) => id === "locomotor.joints");
}

/** Lame, and no joint was described: an eroded cartilage or a normal joint asks for no culture. */
function isLameUnexamined(one: Case): boolean {
  const joints = organById("locomotor.joints");
  const status = joints === undefined ? undefined : one.organ(joints).status;
  return isJointInQuestion(one) && (status === "blank" || status === "not_examined");
}
