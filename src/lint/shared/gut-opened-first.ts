/** Samples that were taken after the gut was opened: one cause, so one line for all of them. */
import { type Case, isAfter, type Path } from "../../cases/index.ts";
import {
  type IndexedSample,
  isSampledAfter,
  isTissue,
  misdatedSamples,
  type Sample,
  samplesOf,
  soundStepAt,
} from "../../record/index.ts";

import { listing } from "../../words/listing.ts";

import type { Report } from "../rule.ts";

/** Whether it comes from inside the carcass: tissue, or blood, which is then drawn from the heart. */
export const isSterileInside = ({ from }: Sample): boolean => isTissue(from) || from === "blood";

/** Samples of a kind taken after the gut was opened. */
export function afterGutOpened(one: Case, isMeant: (sample: Sample) => boolean): IndexedSample[] {
  if (soundStepAt(one, "gut_opened") === undefined) return [];
  const misdated = misdatedSamples(one);
  return samplesOf(one).filter(
    ({ sample, index }) =>
      isMeant(sample) && isSampledAfter(one, sample, "gut_opened") && !misdated.includes(index),
  );
}

/** Whether the step of the sterile samples came after the gut; that finding then speaks for the single samples. */
export function isSterileStepLate(one: Case): boolean {
  const [opened, sterile] = [soundStepAt(one, "gut_opened"), soundStepAt(one, "sterile_samples")];
  return opened !== undefined && sterile !== undefined && isAfter(sterile, opened);
}

/** Reports one sample at its time, or several together at the list. @param what such as ` for culture` */
export function reportAfterGut(
  one: Case,
  found: readonly IndexedSample[],
  report: Report,
  text: { readonly what: string; readonly advice: string },
): void {
  const [first] = found;
  if (first === undefined || isSterileStepLate(one)) return;
  const single = found.length === 1;
  const path: Path = single ? ["samples", first.index, "at"] : ["samples"];
  report(
    `${single ? `samples[${first.index}].at` : "samples"}: ${listing(found.map(({ sample }) => sample.id))}${text.what} ${single ? "was" : "were"} taken after the gut was opened (${one.record.steps?.gut_opened}). ${text.advice}`,
    path,
    single ? "value" : "key",
  );
}
