import type { CaseRule } from "../../rule.ts";

export const culledWithoutReason: CaseRule = {
  id: "culled-without-reason",
  scope: "case",
  family: "selection",
  level: "note",
  summary: "Of a culled pig it is told what it was culled for.",
  protects: "A runt, a hernia and a broken leg have different lungs; in a year nobody knows which it was.",
  source: { cite: "common practice of recording", confidence: "common-practice" },
  bad: { case: "selection: {basis: culled}" },
  good: { case: "selection: {basis: culled, note: navel hernia}" },
  check(one, report) {
    const { basis, note } = one.record.selection ?? {};
    if (basis === "culled" && note === undefined && one.record.history === undefined)
      report(
        "selection.note is blank. Say what this pig was culled for, such as note: navel hernia.",
        ["selection", "note"],
        "key",
      );
  },
};
