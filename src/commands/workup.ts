/** `carcase workup`: what do the findings fit, and what speaks against it? */
import { openAlarmsOf } from "../alarms/index.ts";
import type { Archive } from "../cases/index.ts";
import { workupMarkdown, workupText } from "../formats/workup/document.ts";
import { workupJson } from "../formats/workup/json.ts";
import type { Subject } from "../patterns/index.ts";
import { type Workup, workUp } from "../workup/index.ts";
import type { CommonOptions } from "./options.ts";
import { whole } from "./parsers.ts";
import type { Run } from "./run.ts";

export interface WorkupOptions extends CommonOptions {
  readonly first?: string;
  readonly all?: true;
}

export function workup(run: Run<WorkupOptions>): number {
  const { all, first, quiet } = run.options;
  const look = {
    all: all === true,
    quiet: quiet === true,
    ...(first !== undefined && { first: whole("--first", first, 1, 1000) }),
  };
  const written = run.format<(workups: readonly Workup[]) => string>({
    text: (workups) => workupText(workups, run.style, { ...look, width: run.width }),
    markdown: (workups) => workupMarkdown(workups, look),
    json: workupJson,
  });
  const archive = run.soundArchive();
  // While an alarm stands nothing is said but its notice.
  if (openAlarmsOf(archive).length > 0) return run.end(true);
  const subjects = subjectsOf(archive, run.paths);
  if (subjects.length > 0 || run.options.format === "json")
    run.write(written(subjects.map((subject) => workUp(subject))));
  return run.end();
}

/** Visits with their cases, and cases without a visit; one case alone where it was asked for by name. */
function subjectsOf({ visits, cases }: Archive, paths: readonly string[]): Subject[] {
  const [only] = cases;
  if (only !== undefined && cases.length === 1 && paths.length === 1 && paths[0]?.endsWith(".yaml"))
    return [only];
  return [
    ...visits.filter((visit) => visit.cases.length > 0),
    ...cases.filter((one) => one.visit === undefined),
  ];
}
