import { type Case, formatPath, type Path } from "../../../cases/index.ts";
import { description, organs } from "../../../knowledge/index.ts";
import { changedWord } from "../../../notes/change.ts";
import { statesOf } from "../../../record/index.ts";
import type { CaseRule } from "../../rule.ts";
import { unrecordedWords } from "../../shared/alarm-words.ts";

export const normalNoteContradiction: CaseRule = {
  id: "normal-note-contradiction",
  scope: "case",
  family: "description",
  level: "warning",
  summary: "The note of a normal organ describes no lesion.",
  protects:
    "What stands in a note is scored nowhere, alarms nobody and is counted as normal; a finding is seen by every table.",
  source: description.changed.source,
  bad: { case: "lymphoid: {spleen: {state: normal, note: firm and three times normal size}}" },
  good: { case: "lymphoid: {spleen: {state: normal, note: 'firm; not enlarged, no infarcts'}}" },
  check(one, report) {
    for (const organ of organs)
      for (const { entry, path } of statesOf(one, organ)) {
        const word = entry?.state === "normal" ? changedWord(entry.note, organ, one.ageClass) : undefined;
        if (word !== undefined && !isAlarm(one, [...path, "note"]))
          report(
            `${formatPath([...path, "note"])}: "${word}", yet the organ is recorded as normal. Write it as a finding in place of state: normal, or say in the note what it is not.`,
            [...path, "note"],
          );
      }
  },
};

/** Words of an alarm are reported as such, and once. */
const isAlarm = (one: Case, path: Path): boolean =>
  unrecordedWords(one).some((words) => formatPath(words.path) === formatPath(path));
