/** Samples that cannot serve, from the table of the knowledge files: no answer in them, or not for their container. */
import type { Case } from "../cases/index.ts";
import { type ImpossibleSample, impossibleSamples } from "../knowledge/index.ts";
import { isAmong, isTissue, type Sample } from "../record/index.ts";

const rows = Object.values(impossibleSamples.rows);

/** The first row of the table that is true of a sample and the tests asked of it. */
export const impossibleUse = (one: Case, sample: Sample): ImpossibleSample | undefined =>
  rows.find((row) => isMet(row, sample, one));

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
