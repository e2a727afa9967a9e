import type { CaseRule } from "../../rule.ts";

export const selectionBasisMissing: CaseRule = {
  id: "selection-basis-missing",
  scope: "case",
  family: "selection",
  level: "error",
  summary: "How the pig came to be examined is recorded.",
  protects:
    "Three ill pigs out of three picked for illness say nothing of how common it is; without the basis no proportion has a meaning.",
  source: { cite: "definition of a probability sample; general epidemiology", confidence: "common-practice" },
  bad: { case: "selection: {basis: }" },
  good: { case: "selection: {basis: clinical}" },
  check(one, report) {
    if (one.record.selection?.basis === undefined)
      report(
        "selection.basis is blank. Write how this pig was chosen: random, complete, clinical, found-dead, culled, comparison or convenience.",
        ["selection", "basis"],
        "key",
      );
  },
};
