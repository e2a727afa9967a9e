import { type FormatRule, practice } from "../../rule.ts";

export const alarmCannotBeTold: FormatRule = {
  id: "alarm-cannot-be-told",
  scope: "format",
  family: "alarm",
  level: "error",
  locked: true,
  summary: "Where an alarm looks, every key and value fits the case format.",
  protects:
    "A mistyped vesicle raises no alarm; until it is put right nobody can tell whether there is one, and nothing may go on.",
  lookAlike:
    "Nothing: a harmless lesion under a mistyped word cannot be told from a true one. Write the nearest word of carcase explain processes, and the rest in a note.",
  source: practice(
    "the format of this project; suspicion of a notifiable disease is told before anything goes on",
  ),
  bad: { case: "external: {feet: [{process: vesicel, distribution: multifocal, size: 10 mm}]}" },
  good: { case: "external: {feet: normal}" },
};
