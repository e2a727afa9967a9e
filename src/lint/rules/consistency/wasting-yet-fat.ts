import type { CaseRule } from "../../rule.ts";

export const wastingYetFat: CaseRule = {
  id: "wasting-yet-fat",
  scope: "case",
  family: "consistency",
  level: "warning",
  summary: "A pig that wastes is not in fat condition.",
  protects: "Sign and condition come from two looks at one pig, or from two pigs.",
  source: { cite: "common practice", confidence: "common-practice" },
  bad: { case: "pig: {condition: 4.5}\nselection: {signs: [wasting]}" },
  good: { case: "pig: {condition: 1.5}\nselection: {signs: [wasting]}" },
  check(one, report) {
    const condition = one.record.pig?.condition;
    if (condition !== undefined && condition >= 4 && one.signs.includes("wasting"))
      report(
        `pig.condition: ${condition} of 5 (very fat) in a pig that is wasting. Check the pig and the direction of the scale.`,
        ["pig", "condition"],
      );
  },
};
