import { organById } from "../../../knowledge/index.ts";
import type { CaseRule } from "../../rule.ts";

export const brainInPieces: CaseRule = {
  id: "brain-in-pieces",
  scope: "case",
  family: "scoring",
  level: "error",
  summary: "The brain leaves the skull whole, or halved along the midline.",
  protects: "Loose pieces cannot be oriented, and where the lesion lay is lost for good.",
  source: { cite: "common practice", confidence: "common-practice" },
  bad: { case: "nervous: {brain: {taken: pieces}}" },
  good: { case: "nervous: {brain: {state: normal, taken: halved}}" },
  check(one, report) {
    const organ = organById("nervous.brain");
    if (organ === undefined) return;
    const { entry, findings, path, status } = one.organ(organ);
    if (
      status === "not_assessable" ||
      entry?.taken !== "pieces" ||
      entry.state === "normal" ||
      findings.length > 0
    )
      return;
    report(
      "nervous.brain.taken: in pieces. Write not_assessable: {because: damaged, why: taken in pieces} with it; the next brain comes out whole, or is halved along the midline, one half fixed and one fresh or frozen.",
      [...path, "taken"],
    );
  },
};
