import { isAwaited, textOf } from "../../../record/index.ts";
import { type CaseRule, practice } from "../../rule.ts";

export const pendingAgainstBasis: CaseRule = {
  id: "pending-against-basis",
  scope: "case",
  family: "diagnosis",
  silent: "never",
  level: "warning",
  summary: "A diagnosis that waits for the laboratory does not rest on it already.",
  protects:
    "Half of a correction: the result is in, and the case still says that it is awaited, or the other way round.",
  lookAlike:
    "Two causes of which one has come and the other has not: name the first beside pending, and basis: laboratory stands.",
  source: practice("common practice of recording"),
  bad: { case: "diagnosis: {aetiologic: [pending], basis: laboratory}" },
  good: { case: "diagnosis: {aetiologic: [pending], basis: pending}" },
  check(one, report) {
    const { aetiologic = [], basis } = one.record.diagnosis ?? {};
    if (basis !== "laboratory" || aetiologic.length === 0) return;
    if (aetiologic.every((entry) => isAwaited(textOf(entry))))
      report(
        "diagnosis.aetiologic is pending, yet basis is laboratory. Write the cause that the laboratory has shown, or basis: pending.",
        ["diagnosis", "basis"],
      );
  },
};
