import type { Case } from "../../../cases/index.ts";
import { type ImpossibleSample, impossibleSamples } from "../../../knowledge/index.ts";
import { isAmong, isTissue, materialTitle, type Sample, samplesOf } from "../../../record/index.ts";
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
      const row = rows.find((entry) => isMet(entry, sample, one));
      if (row === undefined) continue;
      const key = keyOf(row);
      report(
        `samples[${index}].${key}: ${sample.id} is ${materialTitle(sample.from)}${askedFor(row, sample)}; ${row.because}. ${row.instead}.`,
        ["samples", index, key],
      );
    }
  },
};

const rows = Object.values(impossibleSamples.rows);

/** Which entry of the sample cannot be. */
const keyOf = ({ has, says_yes: yes, tests }: ImpossibleSample): keyof Sample =>
  has?.[0] ?? yes?.[0] ?? (tests === undefined ? "into" : "for");

function isMet(row: ImpossibleSample, sample: Sample, { ageClass }: Case): boolean {
  const { from, into = "", for: tests = [] } = sample;
  if (row.from !== undefined && !isAmong(from, row.from)) return false;
  if (row.except !== undefined && (!isTissue(from) || isAmong(from, row.except))) return false;
  if (row.tests !== undefined && !tests.some((test) => row.tests?.includes(test))) return false;
  if (row.into !== undefined && !row.into.includes(into)) return false;
  if (row.has?.some((key) => sample[key] === undefined) === true) return false;
  if (row.says_yes?.some((key) => sample[key] !== "yes" && sample[key] !== true) === true) return false;
  return row.classes === undefined || (ageClass !== undefined && row.classes.includes(ageClass));
}

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
