/** Deaths of a group against an alarm pattern. */
import { moment } from "../cases/index.ts";
import type { AlarmCondition } from "../knowledge/index.ts";
import type { AlarmSubject, Evidence } from "./alarm.ts";

/**
 * The groups that lost so many of their pigs; undefined when none did. A case asks its own group, a case without one
 * all groups of its visit. Where the days matter, a group without the onset of its signs does not count.
 */
export function deaths(
  wanted: NonNullable<AlarmCondition["deaths"]>,
  subject: AlarmSubject,
): Evidence[] | undefined {
  const isVisit = "cases" in subject;
  const visit = isVisit ? subject : subject.visit;
  const own = isVisit ? undefined : subject.record.pig?.group;
  const found = Object.entries(visit?.record.groups ?? {}).flatMap(([group, { at_risk, dead, onset }]) => {
    if (own !== undefined && own !== group) return [];
    if (at_risk === undefined || at_risk === 0 || dead === undefined) return [];
    if (dead < wanted.at_least || dead / at_risk < wanted.share) return [];
    const days = daysBetween(onset, visit?.record.date);
    if (wanted.within !== undefined && (days === undefined || days > wanted.within)) return [];
    const text = `${dead} of ${at_risk} dead in ${group}`;
    return [{ subject, path: ["groups", group, "dead"], text, beforeKnife: true }];
  });
  if (found.length === 0) return undefined;
  return isVisit ? found : [];
}

function daysBetween(from: string | undefined, to: string | undefined): number | undefined {
  const [first, last] = [moment(from), moment(to)];
  return first === undefined || last === undefined ? undefined : (last.written - first.written) / 24;
}
