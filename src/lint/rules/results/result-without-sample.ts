import { placed } from "../../../record/index.ts";
import { practice, type ResultsRule } from "../../rule.ts";

export const resultWithoutSample: ResultsRule = {
  id: "result-without-sample",
  scope: "results",
  family: "results",
  level: "error",
  summary: "A result names the sample or the pool that was tested, and one of the two.",
  protects: "A result that hangs on no sample can be laid to any pig, and is believed of all of them.",
  lookAlike: "A result of the whole herd, such as bulk milk or slurry: write it into the note of the visit.",
  source: practice("laboratories report by the number on the label; common practice"),
  bad: { results: "entries: [{test: pcr, agent: prrsv, interpretation: negative}]" },
  good: { results: "entries: [{sample: 01-B, test: pcr, agent: prrsv, interpretation: negative}]" },
  check(results, _visit, report) {
    for (const { entry, path, index } of placed(results)) {
      if ((entry.sample === undefined) !== (entry.pool === undefined)) continue;
      const what =
        entry.sample === undefined
          ? "no sample is named. Write sample: with the number on the label, or pool: with all that were tested as one"
          : "sample and pool are both named. Keep pool: where several were tested as one, else sample:";
      report(`entries[${index}]: ${what}.`, entry.sample === undefined ? path : [...path, "pool"]);
    }
  },
};
