import { isIllBeforeBirth } from "../../../record/index.ts";

import type { CaseRule } from "../../rule.ts";

export const onsetBeforeBirth: CaseRule = {
  id: "onset-before-birth",
  scope: "case",
  family: "consistency",
  level: "error",
  summary: "The signs of a pig began after it was born.",
  protects:
    "An onset of last year makes an acute pig a chronic one; the year, the age or the tag is wrong, and the tests are chosen by it.",
  source: { cite: "order of events; common practice", confidence: "common-practice" },
  bad: { case: "selection: {onset: 2025-04-18}" },
  good: { case: "selection: {onset: 2026-04-19}" },
  check(one, report) {
    const { selection, pig } = one.record;
    if (isIllBeforeBirth(one))
      report(
        `selection.onset: the signs would have begun (${selection?.onset}) before the pig was born (age ${pig?.age}). Correct the onset, the age or the tag; signs of its group belong into visit.yaml.`,
        ["selection", "onset"],
      );
  },
};
