/** A visit whose date is wrong, told by all of its pigs: one line at the date, and none about what follows from it. */
import { type Case, isAfter, type Moment, moment, type Visit } from "../cases/index.ts";
import { selectionRules } from "../knowledge/index.ts";
import { datedEvents, isDeathTooEarly, yearSlips } from "./misdated.ts";

/** So many pigs, and it is the date of the visit that is wrong. */
const fewest = 3;

export interface OpenedPig {
  readonly one: Case;
  readonly at: Moment;
  /** Whole days after the visit; below zero before it. */
  readonly days: number;
}

/** The pigs with a time of opening, without those whose year or month was mistyped; none where the visit has no date. */
export function openedPigs(visit: Visit): OpenedPig[] {
  const day = moment(visit.record.date);
  if (day === undefined) return [];
  return visit.cases.flatMap((one) => {
    const at = moment(one.record.opened?.at);
    if (at === undefined || yearSlips(one).length > 0 || isDeathTooEarly(one)) return [];
    return [{ one, at, days: Math.floor(at.written / 24) - Math.floor(day.written / 24) }];
  });
}

/** Whether all pigs were opened before the date of the visit. */
export const areAllBefore = (visit: Visit): boolean => {
  const day = moment(visit.record.date);
  const pigs = openedPigs(visit);
  return pigs.length >= fewest && pigs.every(({ at }) => day !== undefined && isAfter(day, at));
};

/** Whether all pigs were opened so long after the date that they are of another visit. */
export const areAllAfter = (visit: Visit): boolean => {
  const pigs = openedPigs(visit);
  return pigs.length >= fewest && pigs.every(({ days }) => days > selectionRules.case_days);
};

/** Whether all times of all pigs lie in another year. */
export function areAllOfAnotherYear(visit: Visit): boolean {
  const dated = visit.cases.filter((one) => datedEvents(one).length > 0);
  return dated.length >= fewest && dated.every((one) => yearSlips(one).length === datedEvents(one).length);
}

/** Whether the date of the visit stands against all of its pigs. */
export const isVisitMisdated = (visit: Visit): boolean =>
  areAllBefore(visit) || areAllAfter(visit) || areAllOfAnotherYear(visit);
