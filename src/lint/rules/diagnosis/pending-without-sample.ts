import { isPending } from "../../../record/index.ts";
import { type CaseRule, practice } from "../../rule.ts";

export const pendingWithoutSample: CaseRule = {
  id: "pending-without-sample",
  scope: "case",
  family: "diagnosis",
  level: "warning",
  summary: "A diagnosis that waits for the laboratory has a sample there.",
  protects: "Nothing comes back from a laboratory that was sent nothing, and the case stays open for ever.",
  lookAlike:
    "A result awaited of another pig of the visit, or of a sample taken in life: say which under diagnosis.comment, and the rule is quiet.",
  source: practice("common practice at diagnostic laboratories: a result needs a sample with a test"),
  bad: { case: "diagnosis: {aetiologic: [pending]}\nsamples: " },
  good: { case: "diagnosis: {aetiologic: [pending]}" },
  check(one, report) {
    const { diagnosis } = one.record;
    if (diagnosis === undefined || diagnosis.comment !== undefined) return;
    if (isPending(one) && !(one.record.samples ?? []).some(({ for: tests = [] }) => tests.length > 0))
      report(
        "diagnosis: pending, and this case has no sample with a test. Take one and write it under samples, or say under comment which pig's result is awaited.",
        diagnosis.basis === "pending" ? ["diagnosis", "basis"] : ["diagnosis", "aetiologic"],
      );
  },
};
