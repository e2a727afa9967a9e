/** `carcase note`: one line of trade words becomes a checked entry of a case. */
import { existsSync, readFileSync } from "node:fs";
import { openAlarmsOf } from "../alarms/index.ts";
import { type Archive, type Case, readCases, valueAt } from "../cases/index.ts";
import { withValue } from "../fix/with-value.ts";
import { misreadText } from "../formats/note/misread.ts";
import type { PlacedOrgan } from "../knowledge/index.ts";
import { joined, type Misread, readNote, type Told } from "../phrases/index.ts";
import { grouped } from "../words/grouped.ts";
import { nameOneCase } from "./one-case.ts";
import type { CommonOptions } from "./options.ts";
import type { Run } from "./run.ts";
import { UsageError } from "./usage-error.ts";

export interface NoteOptions extends CommonOptions {
  readonly write?: true;
  readonly partly?: true;
}

const example = "bronchial nodes enlarged 20 mm firm tan";

/** The byte order mark of a file stays. */
const mark = "\ufeff";

export function note(run: Run<NoteOptions>): number {
  const [file, ...words] = run.paths;
  // A note has blanks; a path with blanks is there.
  const isNote = file !== undefined && words.length === 0 && file.includes(" ") && !existsSync(file);
  if (file === undefined || isNote)
    throw nameOneCase((name) => `carcase note ${name} "${isNote ? file : example}"`);
  if (words.length === 0)
    throw new UsageError(`write what you see, such as carcase note ${file} "${example}"`);
  if (file === "-")
    throw new UsageError("name the file of the case; a note is not written into standard input");
  const { write, partly, quiet } = run.options;
  const text = words.join(" ");
  const one = caseIn(run, file, text);
  const read = readNote(text);
  const { fresh, after, misread } = added(one, read.told);
  const wrong = [...read.misread, ...misread].sort((a, b) => a.start - b.start);
  run.complain(misreadText(text, wrong, run.spoken, run.width));
  const isTaken = wrong.length === 0 || partly === true;
  if (isTaken) run.write(fresh, { format: "text" });
  const isFit = fits(run, one, isTaken ? after : one.document.text);
  if (!isTaken) run.say("nothing was written; --partly takes what was understood");
  else if (isFit && write === true) save(run, one, after);
  else if (isFit && quiet !== true) run.say(`nothing was written; --write puts it into ${one.file}`);
  return run.end();
}

function save(run: Run<NoteOptions>, { file, document }: Case, after: string): void {
  if (after === document.text) return;
  const before = readFileSync(file, "utf8");
  const bom = before.startsWith(mark) ? mark : "";
  if (run.rewrite({ file, before, after: bom + after }) && run.options.quiet !== true)
    run.say(`written into ${file}`);
}

/** @throws UsageError where the file is no case, or has a fault that a note could hide */
function caseIn(run: Run, file: string, note: string): Case {
  const { cases } = run.archive({ paths: [file], noticed: true });
  const [one, ...others] = cases;
  if (others.length > 0) throw nameOneCase((name) => `carcase note ${name} "${note}"`, cases);
  if (one === undefined) throw new UsageError(`${file}: name the file of one pig`);
  return one;
}

interface Added {
  /** The note as entries alone. */
  readonly fresh: string;
  /** The text of the case with them. */
  readonly after: string;
  readonly misread: readonly Misread[];
}

const head = "format: 1\n";

/** Adds what was told, organ by organ; what does not go with the case is left out and said. */
function added({ document }: Case, told: readonly Told[]): Added {
  let fresh = head;
  let after = document.text;
  const misread: Misread[] = [];
  for (const [organ, some] of grouped(told, (one) => one.organ)) {
    const fault = faultOf(document.value, organ, some);
    const alone = joined(undefined, some);
    const whole = joined(valueAt(document.value, organ.path), some);
    const wrong = "fault" in alone ? alone : "fault" in whole ? whole : fault;
    if (wrong !== undefined && "fault" in wrong) {
      misread.push({ start: wrong.told.start, end: wrong.told.end, message: wrong.fault });
      continue;
    }
    if (!("entry" in alone && "entry" in whole)) continue;
    const next = withValue(after, organ.path, whole.entry);
    if (next === undefined) {
      const { start, end } = some[0];
      const line = document.where(organ.path).line;
      misread.push({
        start,
        end,
        message: `line ${line} of the file is written in a way in which nothing can be added safely. Write it there by hand`,
      });
      continue;
    }
    after = next;
    fresh = withValue(fresh, organ.path, alone.entry) ?? fresh;
  }
  return { fresh: fresh.slice(head.length), after, misread };
}

/** The word for a whole system leaves no place for one of its organs. */
function faultOf(
  value: unknown,
  { system }: PlacedOrgan,
  [told]: readonly [Told, ...Told[]],
): { readonly fault: string; readonly told: Told } | undefined {
  return typeof valueAt(value, [system]) === "string"
    ? { fault: `the whole system ${system} is normal there. Change that in the file first`, told }
    : undefined;
}

/** Says what does not fit the format in a text of the case, and the notice of alarms that stand in it. @returns whether all fits */
function fits(run: Run, { file, faults }: Case, text: string): boolean {
  const archive: Archive = readCases(["-"], {
    ...(run.options.config !== undefined && { config: run.options.config }),
    input: { bytes: Buffer.from(text), name: file },
  });
  // What cannot be read beside the case was said when it was read.
  run.wasRead({ unreadable: [], passedOver: [], pathsWithoutCases: [], alarms: openAlarmsOf(archive) });
  const known = new Set(faults.map(({ message }) => message));
  const fresh = archive.cases.flatMap((now) => now.faults.filter(({ message }) => !known.has(message)));
  run.faults(fresh);
  return fresh.length === 0;
}
