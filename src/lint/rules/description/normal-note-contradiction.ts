import { type Case, formatPath, type Path } from "../../../cases/index.ts";
import { vocabulary } from "../../../knowledge/index.ts";
import { affirmed } from "../../../notes/index.ts";
import { entriesOf } from "../../../record/index.ts";
import { type CaseRule, practice } from "../../rule.ts";
import { deniedWords, unansweredWords } from "../../shared/alarm-words.ts";

export const normalNoteContradiction: CaseRule = {
  id: "normal-note-contradiction",
  scope: "case",
  family: "description",
  level: "warning",
  summary: "The note of a normal organ describes no lesion.",
  protects:
    "What stands only in a note is scored nowhere, raises no alarm and is counted as normal; a finding enters every table.",
  lookAlike:
    "Lungs that collapsed as they should, a scar of the navel, livor: say it without the name of a lesion (lungs fell in), or as a denial, no collapse.",
  source: practice("common practice of describing gross lesions; the words are those of the vocabulary"),
  bad: { case: "lymphoid: {spleen: {state: normal, note: two infarcts at the edge}}" },
  good: { case: "lymphoid: {spleen: {state: normal, note: 'firm; not enlarged, no infarcts'}}" },
  check(one, report) {
    for (const { state, entry } of entriesOf(one)) {
      if (entry.note === undefined || entry.state !== "normal") continue;
      const [word] = affirmed(entry.note, lesions);
      const path = [...state.path, "note"];
      if (word !== undefined && !isAlarm(one, path))
        report(
          `${formatPath(path)}: "${word.text}", yet the organ is recorded as normal. Write it as a finding in place of state: normal, or say in the note that there was none.`,
          path,
        );
    }
  },
};

/** Words of an alarm are reported as such, and once. */
function isAlarm(one: Case, path: Path): boolean {
  const name = formatPath(path);
  return [...unansweredWords(one), ...deniedWords(one)].some((words) => formatPath(words.path) === name);
}

/** Every process of the vocabulary, also in the plural. */
const lesions = vocabulary.process.map((word) => `${word.replaceAll("-", " ")}*`);
