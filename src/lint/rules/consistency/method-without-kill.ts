import type { CaseRule } from "../../rule.ts";

export const methodWithoutKill: CaseRule = {
  id: "method-without-kill",
  scope: "case",
  family: "consistency",
  level: "error",
  summary: "Only a pig that was killed has a method of killing.",
  protects:
    "Found dead and barbiturate exclude each other; freshness and brain are judged by the one that is wrong.",
  source: { cite: "common practice", confidence: "common-practice" },
  bad: {
    case: "death: {manner: found-dead, note: last seen alive at 06:00}\nselection: {basis: found-dead, onset: , typical: }",
  },
  good: {
    case: "death: {manner: found-dead, method: , note: last seen alive at 06:00}\nselection: {basis: found-dead, onset: , typical: }",
  },
  check(one, report) {
    const { manner, method } = one.record.death ?? {};
    if (method !== undefined && (manner === "found-dead" || manner === "born-dead"))
      report(
        `death.method: ${method}, yet the pig was ${manner}. Take the method out, or correct the manner.`,
        ["death", "method"],
      );
  },
};
