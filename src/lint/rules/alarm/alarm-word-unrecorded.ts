import { alarmSignsSource } from "../../../knowledge/index.ts";
import type { CaseRule } from "../../rule.ts";
import { unrecordedWords, wordsText } from "../../shared/alarm-words.ts";

export const alarmWordUnrecorded: CaseRule = {
  id: "alarm-word-unrecorded",
  scope: "case",
  family: "alarm",
  level: "error",
  summary:
    "What may be a notifiable disease is recorded as a finding or in the alarm check, not only in a note, a site or a reason.",
  protects:
    "Alarms read findings: blisters mentioned only in a note stop nobody, and the samples go off in the post.",
  source: alarmSignsSource,
  bad: { case: "note: blisters on both front feet" },
  good: { case: "note: looked for blisters on all feet, none" },
  check(one, report) {
    for (const words of unrecordedWords(one)) report(wordsText(words, one), words.path);
  },
};
