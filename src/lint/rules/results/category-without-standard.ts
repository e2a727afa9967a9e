import { placed } from "../../../record/index.ts";
import { practice, type ResultsRule } from "../../rule.ts";

export const categoryWithoutStandard: ResultsRule = {
  id: "category-without-standard",
  scope: "results",
  family: "results",
  level: "warning",
  summary: "A category of an antibiogram names the standard and the year whose breakpoints were used.",
  protects:
    "Breakpoints differ between standards, animals and years: the same inhibitory concentration is S in one edition and R in the next.",
  lookAlike: "A concentration or a zone alone needs no standard: it is what was measured.",
  source: practice("interpretation of susceptibility tests; common practice of diagnostic laboratories"),
  bad: {
    results:
      "entries: [{sample: 01-B, test: antibiogram, agent: pasteurella-multocida, antibiogram: [{drug: florfenicol, mic: 0.5, category: S}]}]",
  },
  good: {
    results:
      "entries: [{sample: 01-B, test: antibiogram, agent: pasteurella-multocida, antibiogram: [{drug: florfenicol, mic: 0.5, category: S, standard: VET01S, year: 2024}]}]",
  },
  check(results, _visit, report) {
    for (const { entry, index, path } of placed(results)) {
      const drugs = entry.antibiogram ?? [];
      const lacking = drugs.flatMap(({ category, standard, year }, at) =>
        category !== undefined && (standard === undefined || year === undefined) ? [at] : [],
      );
      const [first] = lacking;
      const drug = first === undefined ? undefined : drugs[first];
      if (first === undefined || drug === undefined) continue;
      const lacks = [drug.standard === undefined ? "standard" : "", drug.year === undefined ? "year" : ""]
        .filter((word) => word !== "")
        .join(" and ");
      const others = lacking.length > 1 ? `, and ${lacking.length - 1} more of this entry` : "";
      report(
        `entries[${index}].antibiogram[${first}]: ${drug.drug} is ${drug.category} by no ${lacks}${others}. Write standard: and year: from the report, or leave the category out.`,
        [...path, "antibiogram", first, "category"],
      );
    }
  },
};
