import { isNoDecision } from "../../../cases/index.ts";
import { type FileRule, practice } from "../../rule.ts";

export const authorityWithoutAnswer: FileRule = {
  id: "authority-without-answer",
  scope: "file",
  family: "alarm",
  level: "error",
  locked: true,
  summary: "The authority entry says what the authority decided.",
  protects:
    "A call that nobody answered lifts no alarm; an entry that only looks like an answer lets samples leave a farm that should be closed.",
  source: practice(
    "common practice of veterinary authorities: restrictions stand until the authority lifts them",
  ),
  bad: { case: "authority: {contacted: 2026-04-20T10:20, answer: 'rang, no reply'}" },
  good: {
    case: "authority: {contacted: 2026-04-20T10:20, answer: no suspicion; go on}",
  },
  check({ record }, report) {
    const answer = "authority" in record ? record.authority?.answer : undefined;
    if (answer !== undefined && isNoDecision(answer))
      report(
        `authority.answer: "${answer}" is not a decision, so that call lifts no alarm. Write what the authority decided; until it has, call again and keep everything where it is.`,
        ["authority", "answer"],
      );
  },
};
