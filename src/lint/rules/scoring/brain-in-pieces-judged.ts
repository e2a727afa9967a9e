import { organById } from "../../../knowledge/index.ts";
import { type CaseRule, practice } from "../../rule.ts";

const organ = organById("nervous.brain");

export const brainInPiecesJudged: CaseRule = {
  id: "brain-in-pieces-judged",
  scope: "case",
  family: "scoring",
  level: "error",
  summary: "A brain taken in pieces is neither called normal nor described.",
  protects:
    "Swelling, asymmetry and herniation cannot be seen in pieces; the word normal would close the case on nothing.",
  lookAlike:
    "Meninges and base of the brain that were seen while it was whole in the skull: describe nervous.meninges, and put the rest into a note of the brain.",
  source: practice(
    "common practice of neuropathology: the brain is removed whole or halved along the midline",
  ),
  bad: { case: "nervous: {brain: {state: normal, taken: pieces}}" },
  good: { case: "nervous: {brain: {state: normal, taken: whole}}" },
  check(one, report) {
    if (organ === undefined) return;
    const { entry, findings, path } = one.organ(organ);
    if (entry?.taken !== "pieces" || (entry.state !== "normal" && findings.length === 0)) return;
    report(
      `nervous.brain: taken in pieces, yet ${findings.length > 0 ? "described" : "called normal"}. Write not_assessable: {because: damaged, why: taken in pieces}; what was seen in the skull goes into a note.`,
      [...path, "taken"],
    );
  },
};
