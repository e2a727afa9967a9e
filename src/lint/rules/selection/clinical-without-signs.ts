import type { CaseRule } from "../../rule.ts";

export const clinicalWithoutSigns: CaseRule = {
  id: "clinical-without-signs",
  scope: "case",
  family: "selection",
  level: "error",
  summary: "A pig chosen for its signs has some.",
  protects: "A healthy pig counted among the ill ones makes lesions look rarer in the disease than they are.",
  source: { cite: "definition of the basis; common practice", confidence: "common-practice" },
  bad: { case: "selection: {signs: [none]}" },
  good: { case: "selection: {basis: comparison, signs: [none]}" },
  check(one, report) {
    const signs = one.record.selection?.signs ?? [];
    if (
      one.record.selection?.basis === "clinical" &&
      signs.length > 0 &&
      signs.every((sign) => sign === "none")
    )
      report(
        "selection.signs: chosen for its signs, and has none. List the signs, or write basis: comparison for a healthy pig.",
        ["selection", "signs"],
      );
  },
};
