import { alarmSignsSource } from "../../../knowledge/index.ts";
import type { CaseRule } from "../../rule.ts";
import { unrecordedWords, wordsText } from "../../shared/alarm-words.ts";

export const alarmWordUnrecorded: CaseRule = {
  id: "alarm-word-unrecorded",
  scope: "case",
  family: "alarm",
  level: "error",
  summary:
    "What may be a notifiable disease stands as a finding or in the alarm check, not only in a note, a site or a reason.",
  protects:
    "Alarms read findings: blisters that stand in a note alone stop nobody, and the samples go out with the post.",
  source: alarmSignsSource,
  bad: { case: "note: blisters on both front feet" },
  good: { case: "note: looked for blisters on all feet, none" },
  check(one, report) {
    for (const words of unrecordedWords(one)) report(wordsText(words, one), words.path);
  },
};
