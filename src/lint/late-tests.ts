/** Tests that come too late for their tissue, by kind of test. */
import type { Case } from "../cases/index.ts";
import { autolysis } from "../knowledge/index.ts";
import { type Sample, samplesOf, spell, type TimeWorth, timeWorth } from "../sampling/index.ts";
import { listing } from "../words/listing.ts";
import type { Report } from "./rule.ts";

interface LateSample {
  readonly sample: Sample;
  readonly index: number;
  /** The tests that are late, all of one kind. */
  readonly late: readonly TimeWorth[];
}

/** Samples with tests of this kind whose worth has come down to one of these. */
export function lateSamples(one: Case, kind: string, worths: readonly TimeWorth["worth"][]): LateSample[] {
  return samplesOf(one).flatMap(({ sample, index }) => {
    const late = (sample.for ?? [])
      .map((test) => timeWorth(one, sample, test))
      .filter((time) => time.kind === kind && worths.includes(time.worth));
    return late.length === 0 ? [] : [{ sample, index, late }];
  });
}

/** Reports each late sample: how late it was, what the limit is, what the test is still worth. */
export function reportLate(one: Case, report: Report, kind: string): void {
  for (const { sample, index, late } of lateSamples(one, kind, ["reduced", "doubtful"])) {
    const tests = listing(late.map(({ test }) => test));
    report(
      `samples[${index}].for: ${sample.id} was taken ${lateness(one, late)}; the worth of ${tests} is ${late[0]?.worth}. Send it all the same (${autolysis.kinds[kind]?.still}), tell the laboratory, and add a pig killed for it.`,
      ["samples", index, "for"],
    );
  }
}

/** `13 h after death between 4 and 15 °C, limit 12 h`. */
export function lateness(one: Case, [time]: readonly TimeWorth[]): string {
  const { hours = 0, limit = 0, band = "" } = time ?? {};
  const least = one.record.death?.manner === "found-dead" ? "at least " : "";
  return `${least}${spell(hours)} after death ${autolysis.bands[band]?.title}, limit ${spell(limit)}`;
}
