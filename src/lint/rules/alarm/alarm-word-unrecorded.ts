import { alarmSignsSource } from "../../../knowledge/index.ts";
import type { CaseRule } from "../../rule.ts";
import { unansweredWords, wordsText } from "../../shared/alarm-words.ts";

export const alarmWordUnrecorded: CaseRule = {
  id: "alarm-word-unrecorded",
  scope: "case",
  family: "alarm",
  level: "error",
  locked: true,
  summary:
    "A sign of a notifiable disease that stands in words has an answer in the alarm check, or a finding that says it.",
  protects:
    "Alarms read answers and findings: blisters mentioned only in a note stop nobody, and the samples go off in the post.",
  lookAlike:
    "A note that denies (no blisters) or only supposes (if there are blisters) is passed; where the words mean something else, answer none in alarm_check.",
  source: alarmSignsSource,
  bad: {
    case: "note: blisters on both front feet\nalarm_check: {before_knife: {vesicles: not-looked-at}}",
  },
  good: {
    case: "note: no blisters on the front feet\nalarm_check: {before_knife: {vesicles: not-looked-at}}",
  },
  check(one, report) {
    for (const words of unansweredWords(one)) report(wordsText(words, one.settings), words.path);
  },
};
