import { formatPath } from "../../../cases/index.ts";
import { placedStates } from "../../../record/index.ts";
import { type CaseRule, practice } from "../../rule.ts";

export const notAssessableWithoutCause: CaseRule = {
  id: "not-assessable-without-cause",
  scope: "case",
  family: "completeness",
  level: "error",
  summary:
    "An organ that could not be assessed says what prevented it, in one of four words and in a sentence.",
  protects:
    "Autolysed, absent, damaged and removed organs are different gaps: the first is closed by coming sooner.",
  lookAlike:
    "Nothing: something always prevented it; where nobody remembers what, why: unknown is an answer too.",
  source: practice("common practice of systematic necropsy"),
  bad: { case: "intestine: {jejunum: {not_assessable: {because: autolysed}}}" },
  good: {
    case: "intestine: {jejunum: {not_assessable: {because: autolysed, why: dead for a day in the sun}}}",
  },
  check(one, report) {
    for (const { state } of placedStates(one)) {
      if (state.status !== "not_assessable") continue;
      const name = formatPath(state.path);
      const path = [...state.path, "not_assessable"];
      if (state.because === undefined)
        report(
          `${name}: say why it could not be assessed. Write because: autolysed, absent, damaged or removed.`,
          [...path, "because"],
          "key",
        );
      if (state.reason === undefined)
        report(
          `${name}: say what had happened to it, such as why: dead for a day in the sun.`,
          [...path, "why"],
          "key",
        );
    }
  },
};
