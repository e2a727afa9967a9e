/** Rules as the linter asks them: family by family, by name, and silent where they must not speak. */
import { openAlarms } from "../alarms/index.ts";
import type { Case, Visit } from "../cases/index.ts";
import { fact, hasDoubtfulTimes } from "../record/index.ts";
import { type CaseRule, families, type Report, type Rule } from "./rule.ts";

export const arranged = (rules: readonly Rule[]): readonly Rule[] =>
  rules
    .map(silenced)
    .sort((a, b) => families.indexOf(a.family) - families.indexOf(b.family) || (a.id < b.id ? -1 : 1));

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

/**
 * The rule that says nothing where it must not, as it says of itself. Rules on samples fall silent where a suspicion
 * stands: while an alarm is open no private sampling advice is given. Rules that ask for more samples stay silent after
 * the authority was called as well: the samples are then its own.
 */
function silenced(rule: Rule): Rule {
  const onSamples = rule.family === "sampling" || rule.family === "timing";
  const { silent = onSamples ? "alarm" : "never" } = rule;
  const timed = rule.trustsTimes && rule.scope === "case" ? whileTimesHold(rule) : rule;
  if (silent === "never") return timed;
  return unless(
    silent === "alarm" ? isAlarmed : (subject) => isAlarmed(subject) || wasCalled(subject),
    timed,
  );
}

const whileTimesHold = (rule: CaseRule): CaseRule => ({
  ...rule,
  check: (one, report) => (hasDoubtfulTimes(one) ? undefined : rule.check(one, report)),
});
