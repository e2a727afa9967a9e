/** Alarms: recorded findings that may be a notifiable disease. Nothing but a dated entry that the authority released or excluded them lifts them. */
export type { Alarm, OpenAlarm } from "./alarm.ts";
export { findAlarms, openAlarms, openAlarmsOf } from "./find-alarms.ts";
export { goneAlarms } from "./gone-alarms.ts";
export { excludedBy, isFarAfter, unsaid } from "./lifted.ts";
export { alarmText, callWhom } from "./notice.ts";
export { isUntold } from "./untold.ts";
