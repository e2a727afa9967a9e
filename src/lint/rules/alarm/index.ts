/** Rules of the family alarm, in the order of the documentation. */
import type { Rule } from "../../rule.ts";
import { alarmSignRecorded } from "./alarm-sign-recorded.ts";
import { alarmWordInVisit } from "./alarm-word-in-visit.ts";
import { alarmWordUnrecorded } from "./alarm-word-unrecorded.ts";
import { alarmsInCase } from "./alarms-in-case.ts";
import { alarmsInHerd } from "./alarms-in-herd.ts";
import { authorityBeforeDeath } from "./authority-before-death.ts";
import { authorityBeforeVisit } from "./authority-before-visit.ts";
import { authorityWithoutAnswer } from "./authority-without-answer.ts";
import { parcelDuringAlarm } from "./parcel-during-alarm.ts";

export const alarmRules: readonly Rule[] = [
  alarmSignRecorded,
  parcelDuringAlarm,
  ...alarmsInCase,
  alarmWordUnrecorded,
  alarmWordInVisit,
  ...alarmsInHerd,
  authorityBeforeDeath,
  authorityBeforeVisit,
  authorityWithoutAnswer,
];
