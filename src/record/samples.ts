/** What was taken of a case: which organs, and for which tests. */
import { type Case, valueAt } from "../cases/index.ts";
import { type PlacedOrgan, sampleRules } from "../knowledge/index.ts";
import { fact } from "./fact.ts";
import { isAmong, isTissue, type Sample } from "./materials.ts";

export interface IndexedSample {
  readonly sample: Sample;
  readonly index: number;
}

export const samplesOf = fact((one: Case): readonly IndexedSample[] =>
  (one.record.samples ?? []).map((sample, index) => ({ sample, index })),
);

/** Whether one of the tests is asked of a sample. */
export const isFor = (sample: Sample, ...tests: readonly string[]): boolean =>
  (sample.for ?? []).some((test) => tests.includes(test));

/**
 * Whether the laboratory itself opens what was sent: the whole carcass, or the brain in its head, by the record of the
 * brain or the site (`whole head`).
 */
export function isSentWhole(one: Case, { from, into, site = "" }: Sample): boolean {
  if (from === "carcass") return true;
  if (!isAmong(from, ["nervous"]) || into === "formalin") return false;
  const isLeftInSkull = valueAt(one.record, ["nervous", "brain", "taken"]) === "left-in-skull";
  return isLeftInSkull || /\b(?:head|skull)\b/i.test(site);
}

/** Whether an organ went to the laboratory unopened: with carcass or head, or as gut or stomach with its lumen closed. */
export const isSentClosed = (one: Case, { id, system }: PlacedOrgan): boolean =>
  samplesOf(one).some(({ sample }) => {
    if (isFixed(sample)) return false;
    const isClosed = sample.lumen_opened === "no" || sample.lumen_opened === false;
    return isSentWhole(one, sample)
      ? sample.from === "carcass" || system === "nervous"
      : isClosed && isAmong(id, [sample.from]);
  });

/** Whether a sample holds living germs that may be shown: for culture, PCR or virus isolation, and not fixed. */
export const isForAgents = (sample: Sample): boolean =>
  isFor(sample, "culture", "pcr", "virus-isolation") && !isFixed(sample);

export const isFixed = (sample: Sample): boolean => sample.into === "formalin" || sample.into === "ethanol";

/** Whether a lesion of the organ has its answer in the parcel: by any organ of its system, or by what stands for it. */
export function isSampled(one: Case, { id, system }: PlacedOrgan): boolean {
  const counts = [system, "carcass", ...(sampleRules.sampled_by[id] ?? [])];
  return samplesOf(one).some(({ sample }) => isAmong(sample.from, counts));
}

/** Whether the sample travels unfixed in a bag or pot: tissue that is chilled or frozen. */
export const isFreshTissue = (sample: Sample): boolean =>
  (sample.into === "chilled" || sample.into === "frozen") && isTissue(sample.from);

/** Whether the sample is a piece of tissue, fixed or fresh, and not a swab or a tube. */
export const isTissueSample = (sample: Sample): boolean =>
  isTissue(sample.from) && (isFreshTissue(sample) || sample.into === "formalin" || sample.into === "ethanol");
