/**
 * Times that cannot be right, told by what stands around them: a year that was mistyped, an opening that lies behind
 * its samples. Rules that reckon with such a time stay silent; the rule that names the cause speaks once.
 */
import { type Case, isAfter, type Moment, moment, type Path } from "../cases/index.ts";
import { sampleRules, selectionRules } from "../knowledge/index.ts";
import { isAmong } from "../sampling/index.ts";
import type { CaseRule } from "./rule.ts";

export interface DatedEvent {
  readonly path: Path;
  /** `death`, `opening`, `sample 01-A`. */
  readonly name: string;
  readonly text: string;
  readonly at: Moment;
}

export interface YearSlip extends DatedEvent {
  /** Days after the visit; below zero before it. */
  readonly days: number;
}

/** A slip of the year is at least so many days; what lies nearer is another slip or none. */
const farDays = 180;

/** What has a time of its own in a case and belongs to the days of the visit: death, opening, samples. */
export function datedEvents(one: Case): DatedEvent[] {
  const { death, opened, samples = [] } = one.record;
  return [
    event(["death", "at"], "death", death?.at),
    event(["opened", "at"], "opening", opened?.at),
    ...samples.map(({ id, at }, index) => event(["samples", index, "at"], `sample ${id}`, at)),
  ].filter((found) => found !== undefined);
}

function event(path: Path, name: string, text: string | undefined): DatedEvent | undefined {
  const at = moment(text);
  return at === undefined || text === undefined ? undefined : { path, name, text, at };
}

/** Times half a year or more from the visit that the year of the visit would bring back to its week. */
export function yearSlips(one: Case): YearSlip[] {
  const date = one.visit?.record.date;
  const day = moment(date);
  if (date === undefined || day === undefined) return [];
  const apart = (at: Moment): number => Math.floor(at.written / 24) - Math.floor(day.written / 24);
  return datedEvents(one).flatMap((found) => {
    const days = apart(found.at);
    const meant = moment(date.slice(0, 4) + found.text.slice(4));
    const slipped =
      Math.abs(days) > farDays && meant !== undefined && Math.abs(apart(meant)) <= selectionRules.case_days;
    return slipped ? [{ ...found, days }] : [];
  });
}

/** So many samples before the opening, and it is the opening that is wrong. */
const fewest = 3;

/** Samples that need an open carcass and were taken before it was opened. */
export function samplesBeforeOpening(one: Case): DatedEvent[] {
  const opened = moment(one.record.opened?.at);
  if (opened === undefined) return [];
  return datedEvents(one).filter(({ path: [key, index], at }) => {
    const sample = key === "samples" ? one.record.samples?.[Number(index)] : undefined;
    return (
      sample !== undefined && !isAmong(sample.from, sampleRules.before_opening.from) && isAfter(opened, at)
    );
  });
}

/** Whether the samples agree against the time of the opening. */
export const isOpeningTooLate = (one: Case): boolean => samplesBeforeOpening(one).length >= fewest;

/** Whether times of the case contradict each other so that no span between them means anything. */
function isMisdated(one: Case): boolean {
  const slips = yearSlips(one).length;
  return (slips > 0 && slips < datedEvents(one).length) || isOpeningTooLate(one);
}

/** Silent where the times of a case cannot be right. */
export const whileTimesHold = (rule: CaseRule): CaseRule => ({
  ...rule,
  check: (one, report) => (isMisdated(one) ? undefined : rule.check(one, report)),
});
