/** Alarms: recorded findings that may be a notifiable disease. Nothing but a dated call to the authority lifts them. */
export type { Alarm, OpenAlarm } from "./alarm.ts";
export { findAlarms, openAlarms, openAlarmsOf } from "./find-alarms.ts";
export { contacts, isFarAfter, isLifted, since } from "./lifted.ts";
export { finding as recordedFinding } from "./match-finding.ts";
export { alarmText, callWhom } from "./notice.ts";
