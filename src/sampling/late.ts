/** Samples that were taken too late for a test, by the time since death and the temperature. */
import type { Case } from "../cases/index.ts";
import { autolysis } from "../knowledge/index.ts";
import {
  doubtfulSamples,
  fact,
  type IndexedSample,
  isFixed,
  sampleAt,
  samplesOf,
  spell,
} from "../record/index.ts";
import { type TimeWorth, timeWorth } from "./worth.ts";

export interface LateSample extends IndexedSample {
  /** The tests that are late, all of one kind. */
  readonly late: readonly TimeWorth[];
}

const timesOf = fact((one: Case): readonly (readonly TimeWorth[])[] =>
  samplesOf(one).map(({ sample }) => (sample.for ?? []).map((test) => timeWorth(one, sample, test))),
);

/** Samples with tests of this kind whose worth has come down to one of these. */
export function lateSamples(one: Case, kind: string, worths: readonly TimeWorth["worth"][]): LateSample[] {
  if (one.record.samples === undefined) return [];
  const found = samplesOf(one).flatMap((entry) => {
    const late = timesOf(one)[entry.index]?.filter(
      (time) => time.kind === kind && worths.includes(time.worth),
    );
    return late === undefined || late.length === 0 ? [] : [{ ...entry, late }];
  });
  // What is dated a month later was not late: the date is wrong, and that is reported once.
  const doubtful = found.length === 0 ? [] : doubtfulSamples(one);
  return found.filter(({ index }) => !doubtful.includes(index));
}

/** Gut for histology that went into a fixative late; what travels unfixed is reported for that. */
export const lateGutSamples = (one: Case, worths: readonly TimeWorth["worth"][]): LateSample[] =>
  lateSamples(one, "gut-histology", worths).filter(
    ({ sample }) => sample.into === undefined || isFixed(sample),
  );

/** `13 h after death between 4 and 15 °C (limit 12 h)`; at least so long where only the opening has a time. */
export function lateness(one: Case, { sample, late: [time] }: LateSample): string {
  const { hours = 0, limit = 0, band = "" } = time ?? {};
  const isLeast = one.record.death?.manner === "found-dead" || sampleAt(one, sample) === undefined;
  return `${isLeast ? "at least " : ""}${spell(hours)} after death ${autolysis.bands[band]?.title} (limit ${spell(limit)})`;
}
