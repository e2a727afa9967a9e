import { placed } from "../../../record/index.ts";
import { practice, type ResultsRule } from "../../rule.ts";

export const resultWithoutAgent: ResultsRule = {
  id: "result-without-agent",
  scope: "results",
  family: "results",
  level: "error",
  summary:
    "A result says what was found or measured, and a positive or negative one of which agent or analyte.",
  protects:
    "Positive alone is positive for what the reader has in mind, and nothing at all counts as an answer.",
  lookAlike:
    "A culture without any growth is negative without an agent; histology and cytology answer in words; not-testable needs no more.",
  source: practice("a laboratory names what it looked for; common practice"),
  bad: { results: "entries: [{sample: 01-B, test: pcr, interpretation: positive}]" },
  good: { results: "entries: [{sample: 01-B, test: culture, interpretation: negative}]" },
  check(results, _visit, report) {
    for (const { entry, index, path } of placed(results)) {
      const { agent, analyte, interpretation: said, test } = entry;
      if (said === "not-testable") continue;
      const isNamed = agent !== undefined || analyte !== undefined;
      const isAnswer = said !== undefined || answers.some((key) => entry[key] !== undefined);
      if (!isAnswer) {
        report(
          `entries[${index}]: nothing is said of the result. Write interpretation: positive, negative, inconclusive or not-testable, or what was measured or seen.`,
          path,
        );
        continue;
      }
      const mayLack = said === undefined ? inWords : said === "negative" ? withoutGrowth : inWords;
      if (isNamed || mayLack.has(test)) continue;
      report(
        `entries[${index}].${said === undefined ? "test" : "interpretation"}: ${said ?? test}, and nobody knows of what. Write agent: as carcase explain agents lists them, or analyte: for what was measured.`,
        [...path, said === undefined ? "test" : "interpretation"],
      );
    }
  },
};

const answers = ["value", "ct", "titre", "text", "lesions", "antibiogram", "sequence"] as const;
/** Tests that answer in words. */
const inWords: ReadonlySet<string> = new Set(["histology", "cytology"]);
const withoutGrowth: ReadonlySet<string> = new Set([
  "histology",
  "cytology",
  "culture",
  "virus-isolation",
  "parasitology",
]);
