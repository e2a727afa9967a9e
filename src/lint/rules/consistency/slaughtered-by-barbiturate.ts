import type { CaseRule } from "../../rule.ts";

export const slaughteredByBarbiturate: CaseRule = {
  id: "slaughtered-by-barbiturate",
  scope: "case",
  family: "consistency",
  level: "error",
  summary: "A pig killed with barbiturate was not slaughtered.",
  protects:
    "Such a carcass never enters the food chain; manner or method is wrong, and so is the selection it stands for.",
  source: { cite: "common practice", confidence: "common-practice" },
  bad: { case: "death: {manner: slaughtered}\nselection: {basis: random, onset: , typical: }" },
  good: {
    case: "death: {manner: slaughtered, method: exsanguination}\nselection: {basis: random, onset: , typical: }",
  },
  check(one, report) {
    const { manner, method } = one.record.death ?? {};
    if (manner === "slaughtered" && method === "barbiturate")
      report(
        "death.manner: slaughtered with barbiturate cannot be. Write manner: euthanised, or method: exsanguination.",
        ["death", "manner"],
      );
  },
};
