import { isFarAfter } from "../../../alarms/index.ts";
import { isAfter, moment } from "../../../cases/index.ts";
import { selectionRules } from "../../../knowledge/index.ts";
import { type CaseRule, practice } from "../../rule.ts";

export const authorityBeforeDeath: CaseRule = {
  id: "authority-before-death",
  scope: "case",
  family: "alarm",
  level: "error",
  locked: true,
  summary:
    "The authority entries of a case are about its pig: made neither before the pig died nor months after the visit.",
  protects:
    "An entry about something else does not lift the alarm of this pig, whether it was made before the pig died or long after the visit.",
  lookAlike:
    "A call about signs in the herd, made while this pig still lived: write it under authority in visit.yaml, which asks only that it is not before the visit.",
  source: practice("order of events; common practice"),
  bad: { case: "authority: [{at: 2026-04-20T08:00, stands: reported}]" },
  good: { case: "authority: [{at: 2026-04-20T10:20, stands: reported}]" },
  check(one, report) {
    const death = one.record.death?.at;
    const [died, date] = [moment(death), one.visit?.record.date];
    for (const [index, { at }] of (one.record.authority ?? []).entries()) {
      const [entry, path] = [moment(at), ["authority", index, "at"]];
      if (entry !== undefined && died !== undefined && isAfter(died, entry))
        report(
          `authority[${index}].at: ${at} lies before the pig died (${death}), so that entry cannot be about what the opening showed. Correct the time, or call again.`,
          path,
        );
      if (isFarAfter(at, date))
        report(
          `authority[${index}].at: ${at} lies more than ${selectionRules.authority_days} days after the visit (${date}), so that entry answers no alarm. Correct the time.`,
          path,
        );
    }
  },
};
