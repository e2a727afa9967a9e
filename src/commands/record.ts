/** `carcase record`: an interview about one pig. */
import { dirname, resolve } from "node:path";
import { openAlarmsOf } from "../alarms/index.ts";
import { type Case, readCases } from "../cases/index.ts";
import { alarmNotice } from "../formats/alarm-notice.ts";
import { type Desk, type Ended, interview } from "../interview/index.ts";
import { lintCases, ruleNamed } from "../lint/index.ts";
import { stopped } from "../lint/silence.ts";
import { count } from "../words/listing.ts";
import { visible } from "../words/visible.ts";
import { canAsk } from "./ask.ts";
import { lineAsker } from "./line-asker.ts";
import { nameOneCase } from "./one-case.ts";
import type { CommonOptions } from "./options.ts";
import type { Run } from "./run.ts";
import { speak } from "./streams.ts";
import { UsageError } from "./usage-error.ts";

export interface RecordOptions extends CommonOptions {
  readonly wanted?: true;
}

export async function record(run: Run<RecordOptions>): Promise<number> {
  const [file] = run.paths;
  if (file === undefined) throw nameOneCase((name) => `carcase record ${name}`);
  if (!canAsk())
    throw new UsageError(
      "record asks in a terminal, and this is none; fill in the file with an editor, and carcase lint says what is missing",
    );
  const { text, folder } = caseToFill(run, file);
  run.clear([dirname(file)]);
  const ask =
    process.env.TERM === "dumb"
      ? lineAsker(run.spoken, run.width)
      : (await import("./key-asker.ts")).keyAsker(run.spoken, run.width);
  const desk: Desk = {
    ask,
    read(now) {
      const { cases, unreadable } = readAs(run, file, now);
      const [one] = cases;
      const faults = [...unreadable, ...(one?.faults ?? [])].map(({ message }) => message);
      if (one === undefined) throw new Error(`${file} cannot be read after an answer: ${faults.join("; ")}`);
      return { one, faults };
    },
    save: (before, after) => run.rewrite({ file, before, after }),
    remarks: (before, after) => remarksOn(after).filter((remark) => !remarksOn(before).includes(remark)),
    notice: (one) =>
      alarmNotice(openAlarmsOf({ cases: [one], visits: [] }), run.spoken, run.width).split("\n"),
  };
  const ended = await interview(desk, text, {
    skipped: new Set(),
    wanted: run.options.wanted === true,
    isStopped: isStopped(run, file, folder),
  });
  speak(farewell(ended, visible(file)));
  return run.end();
}

/** The text of the case and the folder of its visit, when it is one that can be filled in. @throws UsageError when it is not */
function caseToFill(run: Run<RecordOptions>, file: string) {
  const { cases } = run.archive({ paths: [file] });
  const [one] = cases;
  if (cases.length > 1) throw nameOneCase((name) => `carcase record ${name}`, cases);
  if (run.failed || one === undefined) throw new UsageError("name the file of one pig; carcase new makes it");
  if (one.faults.length > 0) {
    run.faults(one.faults);
    throw new UsageError("put this right first; carcase lint --fix does what is certain");
  }
  return { text: one.document.text, folder: one.visit?.folder ?? dirname(file) };
}

const readAs = (run: Run<RecordOptions>, file: string, text: string) => {
  const { config } = run.options;
  return readCases(["-"], {
    ...(config !== undefined && { config }),
    input: { bytes: Buffer.from(text), name: file },
  });
};

/** Whether an alarm of the visit, or in another pig of it, forbids to cut this one. */
function isStopped(run: Run<RecordOptions>, file: string, folder: string): boolean {
  const { visits } = readCases([folder], run.reading().read);
  const isOther = (one: Case): boolean => resolve(one.file) !== resolve(file);
  return (
    stopped({ visits: visits.map((one) => ({ ...one, cases: one.cases.filter(isOther) })), cases: [] }).size >
    0
  );
}

const lintedRemarks = new WeakMap<Case, readonly string[]>();

/** What contradicts itself in a case; what is missing is asked for anyway. */
function remarksOn(one: Case): readonly string[] {
  const known = lintedRemarks.get(one);
  if (known !== undefined) return known;
  const { findings } = lintCases({
    cases: [one],
    visits: [],
    farms: [],
    scales: [],
    unreadable: [],
    passedOver: [],
    pathsWithoutCases: [],
  });
  const remarks = findings
    .filter(({ rule, level }) => (level !== "note" && isContradiction(rule)) || isOfDiagnosis(rule))
    .map(({ message }) => message);
  lintedRemarks.set(one, remarks);
  return remarks;
}

const isContradiction = (rule: string): boolean =>
  ruleNamed(rule)?.family === "consistency" ||
  ["process-impossible", "size-implausible", "volume-implausible"].includes(rule);

/** What a diagnosis lacks is said while it is in mind. */
const isOfDiagnosis = (rule: string): boolean => ruleNamed(rule)?.family === "diagnosis";

function farewell({ how, answers }: Ended, file: string): string {
  const next = {
    done: `Nothing more is asked. What a laboratory would still miss:\n  carcase lint ${file}`,
    stopped: `To go on:\n  carcase record ${file}`,
    alarm: `Nothing that must be cut is asked while the alarm stands. When the authority has answered:\n  carcase record ${file}`,
    kept: "The last answer was not written.",
  }[how];
  return `\n${count(answers, "answer")} written to ${file}.\n${next}\n`;
}
