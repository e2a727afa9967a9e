/**
 * Rules that fall silent. Those on samples do so where a suspicion stands: while an alarm is open no private sampling
 * advice is given. Rules that ask for more samples stay silent after the authority was called as well: the samples are then its own.
 */
import { openAlarms } from "../../alarms/index.ts";
import type { Case, Visit } from "../../cases/index.ts";
import { fact, isMisdated } from "../../record/index.ts";
import type { CaseRule, Report, Rule } from "../rule.ts";

type Subject = Case | Visit;

const isAlarmed = fact((subject: Subject): boolean => openAlarms(subject).length > 0);

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

/** Silent where the times of a case cannot be right. */
export const whileTimesHold = (rule: CaseRule): CaseRule => ({
  ...rule,
  check: (one, report) => (isMisdated(one) ? undefined : rule.check(one, report)),
});
