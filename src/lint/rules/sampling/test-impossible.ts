import { type ImpossibleSample, impossibleSamples } from "../../../knowledge/index.ts";
import { materialTitle, type Sample, samplesOf } from "../../../record/index.ts";
import { impossibleUse } from "../../../sampling/index.ts";
import type { CaseRule } from "../../rule.ts";

export const testImpossible: CaseRule = {
  id: "test-impossible",
  scope: "case",
  family: "sampling",
  level: "warning",
  summary: "A sample holds what its test looks for, and its container can hold the sample.",
  protects:
    "A piece of lung gives no titre and a serum no section: the laboratory bills it, and the question goes unanswered.",
  lookAlike:
    "Meat juice, joint fluid and fluid from the chest of a fetus give a titre, heart blood goes into a tube, a washing of the lung too, a smear of blood is cytology: all are passed.",
  source: impossibleSamples.source,
  bad: { case: "samples: [{id: 01-A, from: lymphoid.spleen, into: edta-tube, for: [pcr]}]" },
  good: { case: "samples: [{id: 01-A, from: blood, into: edta-tube, for: [pcr]}]" },
  check(one, report) {
    if (one.record.samples === undefined) return;
    for (const { sample, index } of samplesOf(one)) {
      const row = impossibleUse(one, sample);
      if (row === undefined) continue;
      const key = keyOf(row);
      report(
        `samples[${index}].${key}: ${sample.id} is ${materialTitle(sample.from)}${askedFor(row, sample)}; ${row.because}. ${row.instead}.`,
        ["samples", index, key],
      );
    }
  },
};

/** Which entry of the sample cannot be. */
const keyOf = ({ has, says_yes: yes, tests }: ImpossibleSample): keyof Sample =>
  has?.[0] ?? yes?.[0] ?? (tests === undefined ? "into" : "for");

/** `for serology, in an EDTA tube`: as far as the row asks. */
function askedFor({ tests, into, has, says_yes: yes }: ImpossibleSample, sample: Sample): string {
  const test = sample.for?.find((one) => tests?.includes(one));
  const entry = [...(has ?? []), ...(yes ?? [])][0];
  return [
    test === undefined ? "" : ` for ${test.replaceAll("-", " ")}`,
    into === undefined ? "" : ` (${sample.into?.replaceAll("-", " ")})`,
    entry === undefined ? "" : `, with ${entry}: ${sample[entry] === true ? "yes" : sample[entry]}`,
  ].join("");
}
