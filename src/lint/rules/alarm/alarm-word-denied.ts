import { formatPath } from "../../../cases/index.ts";
import { alarmSignsSource } from "../../../knowledge/index.ts";
import { listing } from "../../../words/listing.ts";
import type { CaseRule } from "../../rule.ts";
import { deniedWords } from "../../shared/alarm-words.ts";

export const alarmWordDenied: CaseRule = {
  id: "alarm-word-denied",
  scope: "case",
  family: "alarm",
  level: "warning",
  summary: "What a note says of an alarm sign is what the alarm check answers.",
  protects: "A check that is filled in by habit says none over a note that says blisters.",
  lookAlike:
    "Words in another sense: use another word in the note, or accept the finding with the reason. Streaks of a heart that bled are passed where they stand beside the haemorrhage.",
  source: alarmSignsSource,
  bad: { case: "note: blisters on both front feet" },
  good: { case: "note: no blisters on the front feet" },
  check(one, report) {
    for (const { name, sign, path, words } of deniedWords(one))
      report(
        `${formatPath(path)}: ${listing(words.map((word) => `"${word}"`))}, but alarm_check.${sign.look}.${name} is none. Write seen, or say in the note that it was not there; if the words mean something else, accept this with a reason.`,
        path,
      );
  },
};
