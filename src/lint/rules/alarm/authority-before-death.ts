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
    "The authority entry of a case is about its pig: made neither before the pig died nor more than a month after the visit.",
  protects:
    "A call about something else does not lift the alarm of this pig, whether it was made before the pig died or long after the visit.",
  source: practice("order of events; common practice"),
  bad: { case: "authority: {contacted: 2026-04-20T08:00, answer: no suspicion}" },
  good: { case: "authority: {contacted: 2026-04-20T10:20, answer: no suspicion}" },
  check(one, report) {
    const contacted = one.record.authority?.contacted;
    if (contacted === undefined) return;
    const [call, death] = [moment(contacted), moment(one.record.death?.at)];
    if (call !== undefined && death !== undefined && isAfter(death, call))
      report(
        `authority.contacted: the authority was contacted (${contacted}) before the pig died (${one.record.death?.at}), so that call cannot have been about what the opening showed. Correct the time, or call again.`,
        ["authority", "contacted"],
      );
    const date = one.visit?.record.date;
    if (isFarAfter(contacted, date))
      report(
        `authority.contacted: the authority was contacted (${contacted}) more than ${selectionRules.call_days} days after the visit (${date}), so that call answers no alarm. Correct the time.`,
        ["authority", "contacted"],
      );
  },
};
