import { type Case, formatPath, type Path } from "../../../cases/index.ts";
import { description } from "../../../knowledge/index.ts";
import { changedWord } from "../../../notes/change.ts";
import { entriesOf } from "../../../record/index.ts";
import type { CaseRule } from "../../rule.ts";
import { unrecordedWords } from "../../shared/alarm-words.ts";

export const normalNoteContradiction: CaseRule = {
  id: "normal-note-contradiction",
  scope: "case",
  family: "description",
  level: "warning",
  summary: "The note of a normal organ describes no lesion.",
  protects:
    "What stands only in a note is scored nowhere, raises no alarm and is counted as normal; a finding enters every table.",
  source: description.changed.source,
  bad: { case: "lymphoid: {spleen: {state: normal, note: firm and three times normal size}}" },
  good: { case: "lymphoid: {spleen: {state: normal, note: 'firm; not enlarged, no infarcts'}}" },
  check(one, report) {
    for (const { organ, state, entry } of entriesOf(one)) {
      if (entry.note === undefined || entry.state !== "normal") continue;
      const word = changedWord(entry.note, organ, one.ageClass);
      const path = [...state.path, "note"];
      if (word !== undefined && !isAlarm(one, path))
        report(
          `${formatPath(path)}: "${word}", yet the organ is recorded as normal. Write it as a finding in place of state: normal, or say in the note that there was none.`,
          path,
        );
    }
  },
};

/** Words of an alarm are reported as such, and once. */
function isAlarm(one: Case, path: Path): boolean {
  const name = formatPath(path);
  return unrecordedWords(one).some((words) => formatPath(words.path) === name);
}
