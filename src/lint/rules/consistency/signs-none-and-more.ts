import type { CaseRule } from "../../rule.ts";

export const signsNoneAndMore: CaseRule = {
  id: "signs-none-and-more",
  scope: "case",
  family: "consistency",
  level: "error",
  summary: "A pig has no signs, or some; not both in one list.",
  protects:
    "Which organs are due follows from the signs, and none among them hides the rest from the reader.",
  source: { cite: "common practice", confidence: "common-practice" },
  bad: { case: "selection: {signs: [none, cough]}" },
  good: { case: "selection: {signs: [cough]}" },
  check(one, report) {
    const others = one.signs.filter((sign) => sign !== "none");
    if (one.signs.includes("none") && others.length > 0)
      report(`selection.signs: none stands beside ${others.join(" and ")}. Keep one.`, [
        "selection",
        "signs",
      ]);
  },
};
