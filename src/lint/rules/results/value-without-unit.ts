import { placed } from "../../../record/index.ts";
import { practice, type ResultsRule } from "../../rule.ts";
import { resultName } from "../../shared/result-words.ts";

export const valueWithoutUnit: ResultsRule = {
  id: "value-without-unit",
  scope: "results",
  family: "results",
  level: "error",
  summary: "A value that was measured has its unit.",
  protects:
    "Selenium in mg/kg of wet liver and of dry liver differ by a factor of three to four, and the number looks the same.",
  lookAlike: "A ratio such as S/P has unit: S/P, or 1; a Ct and a titre have keys of their own and no unit.",
  source: practice("laboratory reports give number and unit; common practice, the factor from memory"),
  bad: { results: "entries: [{sample: 01-B, test: toxicology, analyte: selenium, value: 0.6}]" },
  good: {
    results: "entries: [{sample: 01-B, test: toxicology, analyte: selenium, value: 0.6, unit: mg/kg}]",
  },
  check(results, _visit, report) {
    for (const result of placed(results)) {
      const { entry, index, path } = result;
      if (entry.value === undefined || entry.unit !== undefined) continue;
      report(
        `entries[${index}].value: ${entry.value} of ${resultName(result)} has no unit. Write unit: as the report has it, such as mg/kg; 1 for a plain ratio.`,
        [...path, "value"],
      );
    }
  },
};
