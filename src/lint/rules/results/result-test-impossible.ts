import { impossibleSamples } from "../../../knowledge/index.ts";
import { materialTitle, placed, type Sample, takenSamples } from "../../../record/index.ts";
import { impossibleUse, unfitContainers } from "../../../sampling/index.ts";
import type { ResultsRule } from "../../rule.ts";

export const resultTestImpossible: ResultsRule = {
  id: "result-test-impossible",
  scope: "results",
  family: "results",
  level: "warning",
  summary: "A result is of a test that its sample can carry.",
  protects:
    "A culture of a piece in formalin is the answer of another sample: a wrong number, or a line too high in the table.",
  lookAlike:
    "A test that was asked for of this sample and cannot succeed is told at the sample; PCR of fixed tissue is done by many laboratories and passed.",
  source: impossibleSamples.source,
  bad: {
    results:
      "entries: [{sample: 01-A, test: culture, agent: pasteurella-multocida, interpretation: negative}]",
  },
  good: {
    results:
      "entries: [{sample: 01-B, test: culture, agent: pasteurella-multocida, interpretation: negative}]",
  },
  check(results, visit, report) {
    const taken = takenSamples(visit);
    for (const { entry, samples, path, index } of placed(results)) {
      if (entry.interpretation === "not-testable") continue;
      for (const id of samples) {
        const of = taken.get(id);
        // What was asked for is told at the sample.
        if (of === undefined || of.sample.for?.includes(entry.test)) continue;
        const asked: Sample = { ...of.sample, for: [entry.test] };
        const why =
          unfitContainers(of.one, asked).find(({ worth }) => worth === "doubtful")?.why ??
          impossibleUse(of.one, asked)?.because;
        if (why === undefined) continue;
        report(
          `entries[${index}].test: ${entry.test} of ${id}, which is ${materialTitle(of.sample.from)}${of.sample.into === undefined ? "" : ` (${of.sample.into})`}: ${why}. Correct the sample or the test.`,
          [...path, "test"],
        );
      }
    }
  },
};
