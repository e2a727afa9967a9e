/** Open alarms of some levels, reported where the record shows them. */
import { type Alarm, alarmText, openAlarms } from "../../alarms/index.ts";
import type { Case, Visit } from "../../cases/index.ts";
import type { AlarmPattern } from "../../knowledge/index.ts";
import type { Report } from "../rule.ts";

type AlarmLevel = AlarmPattern["level"];

/** The alarms of a case. One that rests on the alarm check alone is reported by alarm-sign-recorded. */
export function reportAlarms(one: Case, levels: readonly AlarmLevel[], report: Report): void {
  for (const alarm of openAlarms(one)) {
    const shown = alarm.evidence.filter(({ path }) => path[0] !== "alarm_check");
    if (levels.includes(alarm.pattern.level) && (shown.length > 0 || alarm.evidence.length === 0))
      report(alarmText(alarm), shown[0]?.path ?? ["case"]);
  }
}

/** The alarms that only the pigs of a visit together show. */
export function reportHerdAlarms(
  visit: Visit,
  levels: readonly AlarmLevel[],
  reportVisit: Report,
  reportCase: (one: Case) => Report,
): void {
  for (const alarm of openAlarms(visit))
    if (alarm.subject === visit && levels.includes(alarm.pattern.level))
      reportHerdAlarm(alarm, visit, reportVisit, reportCase);
}

function reportHerdAlarm(
  alarm: Alarm,
  visit: Visit,
  reportVisit: Report,
  reportCase: (one: Case) => Report,
): void {
  const own = alarm.evidence.find(({ subject }) => subject === visit);
  const first = own ?? alarm.evidence[0];
  const at = visit.cases.find((one) => one === first?.subject);
  const report = at === undefined ? reportVisit : reportCase(at);
  report(alarmText(alarm), first?.path ?? ["visit"]);
}
