import { organById } from "../../../knowledge/index.ts";
import type { CaseRule } from "../../rule.ts";

export const brainInPiecesJudged: CaseRule = {
  id: "brain-in-pieces-judged",
  scope: "case",
  family: "scoring",
  level: "error",
  summary: "A brain in pieces is neither normal nor described.",
  protects:
    "Nobody can see swelling, symmetry or herniation on pieces; the word normal would close the case on nothing.",
  source: { cite: "common practice", confidence: "common-practice" },
  bad: { case: "nervous: {brain: {state: normal, taken: pieces}}" },
  good: { case: "nervous: {brain: {state: normal, taken: whole}}" },
  check(one, report) {
    const organ = organById("nervous.brain");
    if (organ === undefined) return;
    const { entry, findings, path } = one.organ(organ);
    if (entry?.taken !== "pieces" || (entry.state !== "normal" && findings.length === 0)) return;
    report(
      `nervous.brain: taken in pieces and yet ${findings.length > 0 ? "described" : "normal"}. Write not_assessable: {because: damaged, why: taken in pieces}; what was seen in the skull goes into a note.`,
      [...path, "taken"],
    );
  },
};
