import { organById } from "../../../knowledge/index.ts";
import { type CaseRule, practice } from "../../rule.ts";

const organ = organById("nervous.brain");

export const brainInPieces: CaseRule = {
  id: "brain-in-pieces",
  scope: "case",
  family: "scoring",
  level: "error",
  summary: "The brain is taken out of the skull whole, or halved along the midline.",
  protects: "Loose pieces cannot be oriented, and where the lesion lay is lost for good.",
  lookAlike:
    "A brain that was already broken by bolt, shot or fall: not_assessable: {because: damaged, why: …} is the answer, with taken: pieces or without.",
  source: practice(
    "common practice of neuropathology: the brain is removed whole or halved along the midline",
  ),
  bad: { case: "nervous: {brain: {taken: pieces}}" },
  good: { case: "nervous: {brain: {state: normal, taken: halved}}" },
  check(one, report) {
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
      "nervous.brain.taken: in pieces. Add not_assessable: {because: damaged, why: taken in pieces}; take the next brain out whole, or halve it along the midline, one half fixed and one fresh or frozen.",
      [...path, "taken"],
    );
  },
};
