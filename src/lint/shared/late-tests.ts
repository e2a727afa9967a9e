/** Tests that come too late for their tissue, by kind of test. */
import { type Case, formatPath, isUnborn, type Path } from "../../cases/index.ts";
import { autolysis } from "../../knowledge/index.ts";
import { isFixed, misdatedSamples, type Sample, sampleAt, samplesOf, spell } from "../../record/index.ts";
import { type TimeWorth, timeWorth } from "../../sampling/index.ts";
import { listing } from "../../words/listing.ts";

import type { Report } from "../rule.ts";

interface LateSample {
  readonly sample: Sample;
  readonly index: number;
  /** The tests that are late, all of one kind. */
  readonly late: readonly TimeWorth[];
}

/** Samples with tests of this kind whose worth has come down to one of these. */
export function lateSamples(one: Case, kind: string, worths: readonly TimeWorth["worth"][]): LateSample[] {
  const found = samplesOf(one).flatMap(({ sample, index }) => {
    const late = (sample.for ?? [])
      .map((test) => timeWorth(one, sample, test))
      .filter((time) => time.kind === kind && worths.includes(time.worth));
    return late.length === 0 ? [] : [{ sample, index, late }];
  });
  // What is dated a month later was not late: the date is wrong, and that is told once.
  const misdated = found.length === 0 ? [] : misdatedSamples(one);
  return found.filter(({ index }) => !misdated.includes(index));
}

/** Gut for histology that went into a fixative late; what travels unfixed is told for that. */
export const lateGut = (one: Case, worths: readonly TimeWorth["worth"][]): LateSample[] =>
  lateSamples(one, "gut-histology", worths).filter(
    ({ sample }) => sample.into === undefined || isFixed(sample),
  );

/**
 * Reports late samples: how late they were, what the limit is, what the tests are still worth. Samples that are late
 * alike have one cause and get one line.
 */
export function reportLate(one: Case, report: Report, kind: string): void {
  const alike = new Map<string, LateSample[]>();
  for (const found of lateSamples(one, kind, ["reduced", "doubtful"])) {
    const key = `${lateness(one, found)} ${found.late[0]?.worth}`;
    alike.set(key, [...(alike.get(key) ?? []), found]);
  }
  for (const found of alike.values()) reportAlike(one, report, kind, found);
}

function reportAlike(one: Case, report: Report, kind: string, found: readonly LateSample[]): void {
  const [first] = found;
  if (first === undefined) return;
  const single = found.length === 1;
  const path: Path = single ? ["samples", first.index, "for"] : ["samples"];
  const tests = listing([...new Set(found.flatMap(({ late }) => late.map(({ test }) => test)))]);
  report(
    `${formatPath(path)}: ${listing(found.map(({ sample }) => sample.id))} ${single ? "was" : "were"} taken ${lateness(one, first)}; the worth of ${tests} is ${first.late[0]?.worth}. Send ${single ? "it" : "them"} all the same (${autolysis.kinds[kind]?.still}), tell the laboratory, and add ${isUnborn(one.ageClass) ? "a fresher fetus if one can be had" : "a pig killed for it"}.`,
    path,
    single ? "value" : "key",
  );
}

/** `13 h after death between 4 and 15 °C, limit 12 h`; at least so long where only the opening has a time. */
export function lateness(one: Case, { sample, late: [time] }: LateSample): string {
  const { hours = 0, limit = 0, band = "" } = time ?? {};
  const isLeast = one.record.death?.manner === "found-dead" || sampleAt(one, sample) === undefined;
  return `${isLeast ? "at least " : ""}${spell(hours)} after death ${autolysis.bands[band]?.title}, limit ${spell(limit)}`;
}
