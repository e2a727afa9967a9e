/**
 * Rules on samples fall silent where a suspicion stands: while an alarm is open no private sampling advice is given.
 * Rules that ask for more samples stay silent after the authority was called as well: the samples are then its own.
 */
import { openAlarms } from "../alarms/index.ts";
import type { Case, Visit } from "../cases/index.ts";
import type { Report, Rule } from "./rule.ts";

type Subject = Case | Visit;

const known = new WeakMap<Subject, boolean>();

function isAlarmed(subject: Subject): boolean {
  const before = known.get(subject);
  if (before !== undefined) return before;
  const alarmed = openAlarms(subject).length > 0;
  known.set(subject, alarmed);
  return alarmed;
}

const wasCalled = (subject: Subject): boolean =>
  "cases" in subject
    ? subject.record.authority !== undefined ||
      subject.cases.some(({ record }) => record.authority !== undefined)
    : subject.record.authority !== undefined || subject.visit?.record.authority !== undefined;

function unless(stands: (subject: Subject) => boolean, rule: Rule): Rule {
  if (rule.scope === "case")
    return {
      ...rule,
      check: (one: Case, report: Report) => (stands(one) ? undefined : rule.check(one, report)),
    };
  if (rule.scope === "visit")
    return {
      ...rule,
      check: (visit: Visit, reportVisit: Report, reportCase: (one: Case) => Report) =>
        stands(visit) ? undefined : rule.check(visit, reportVisit, reportCase),
    };
  return rule;
}

/** Silent while an alarm is open. */
export const holdBack = (rule: Rule): Rule => unless(isAlarmed, rule);

/** Silent while an alarm is open, and after the authority was called. */
export const leaveToAuthority = (rule: Rule): Rule =>
  unless((subject) => isAlarmed(subject) || wasCalled(subject), rule);
