/** Lints an archive folder by folder, each let go before the next is read; a large one on several threads. */
import { createRequire } from "node:module";
import type * as V8 from "node:v8";
import type * as Threads from "node:worker_threads";
import { type OpenAlarm, openAlarmsOf } from "../alarms/index.ts";
import { ArchiveReader, type ReadEnd, type ReadOptions } from "../cases/index.ts";
import { gradeCheckFor, type LintedParts, Linter, type LintOptions } from "../lint/index.ts";
import { withCheckedScales } from "./sound-cases.ts";

/** What is linted: plain data, as it is handed to a thread. */
export interface LintJob {
  readonly paths: readonly string[];
  readonly read: ReadOptions;
  readonly rules: LintOptions;
}

/** Which of the folders a thread takes. */
export interface Share {
  readonly from: number;
  readonly to: number;
}

/** What was found, and what was read besides: plain data. */
export interface LintedFolders extends Omit<ReadEnd, "scales"> {
  readonly parts: readonly LintedParts[];
  readonly alarms: readonly OpenAlarm[];
}

/** Lints the folders of one share; all of them where none is named. */
export async function lintShare(job: LintJob, share?: Share): Promise<LintedFolders> {
  const reader = new ArchiveReader(job.paths, job.read);
  return lintRead(reader, job, share ?? { from: 0, to: reader.folders.length });
}

async function lintRead(
  reader: ArchiveReader,
  { rules }: LintJob,
  { from, to }: Share,
): Promise<LintedFolders> {
  const linter = new Linter(rules);
  const alarms: OpenAlarm[] = [];
  const folders = reader.folders.slice(from, to);
  for (const [index, folder] of folders.entries()) {
    const read = reader.read(folder);
    alarms.push(...openAlarmsOf(read));
    linter.gradeCheck = await gradeCheckFor(read.cases);
    linter.add(read);
    reader.letGo(folders[index + 1]);
  }
  const { scales, ...end } = await withCheckedScales(reader.end());
  for (const scale of scales) linter.addScale(scale);
  return { ...end, parts: [linter.parts()], alarms };
}

/** Modules of Node that take time to load and that a few files do not need. */
const ofNode = createRequire(import.meta.url);

/** From so many files on the heap is held down. */
const manyFiles = 300;
/** Below so many, V8 compiles more functions than the rest of the run pays back. */
const compilingPays = 3000;

/**
 * An archive is read and let go folder by folder: without these V8 lets the heap grow with it, and collects young objects
 * in too small a space (docs/performance.md).
 */
function holdHeapDown(files: number): void {
  const { setFlagsFromString } = ofNode("node:v8") as typeof V8;
  setFlagsFromString("--heap-growing-percent=20");
  setFlagsFromString("--semi-space-growth-factor=4");
  if (files < compilingPays) setFlagsFromString("--interrupt-budget=400000");
}

/**
 * Lints all folders.
 * @param threads how many share the work. On two cores a second one gains little: V8 compiles and collects beside the
 *   first (docs/performance.md)
 */
export async function lintFolders(job: LintJob, threads = 1): Promise<LintedFolders> {
  const reader = new ArchiveReader(job.paths, job.read);
  const files = reader.folders.reduce((sum, folder) => sum + folder.files.length, 0);
  if (files > manyFiles) holdHeapDown(files);
  // Standard input was read by this thread.
  const most = job.read.input === undefined ? threads : 1;
  const [first = { from: 0, to: 0 }, ...others] = shares(
    reader.folders.map((folder) => folder.files.length),
    most,
  );
  const working = others.map((share) => lintInThread(job, share));
  const done = [await lintRead(reader, job, first), ...(await Promise.all(working))];
  return done.length === 1 && done[0] !== undefined ? done[0] : withDuplicates(joined(done), job);
}

/** Folders in their order, cut into so many shares of about as many files. */
function shares(files: readonly number[], count: number): Share[] {
  const total = files.reduce((sum, one) => sum + one, 0);
  const cuts = [0];
  let before = 0;
  for (const [index, one] of files.entries()) {
    if (before >= (total * cuts.length) / count && cuts.length < count) cuts.push(index);
    before += one;
  }
  return cuts.map((from, index) => ({ from, to: cuts[index + 1] ?? files.length }));
}

function lintInThread(job: LintJob, share: Share): Promise<LintedFolders> {
  return new Promise((resolve, reject) => {
    const { Worker } = ofNode("node:worker_threads") as typeof Threads;
    const worker = new Worker(ofNode.resolve("../../bin/lint-thread.js"), {
      workerData: { job, share },
    });
    worker.once("message", resolve);
    worker.once("error", reject);
    worker.once("exit", (code) => reject(new Error(`a thread of lint ended early (${code})`)));
  });
}

function joined(done: readonly LintedFolders[]): LintedFolders {
  const unreadable = new Map(
    done
      .flatMap((one) => one.unreadable)
      .map((fault) => [JSON.stringify([fault.file, fault.line, fault.column, fault.message]), fault]),
  );
  const [first, ...others] = done.map((one) => one.pathsWithoutCases);
  return {
    parts: done.flatMap((one) => one.parts),
    alarms: done.flatMap((one) => one.alarms),
    unreadable: [...unreadable.values()],
    pathsWithoutCases: (first ?? []).filter((path) => others.every((paths) => paths.includes(path))),
  };
}

/** The one rule that looks across folders: ids of one thread that another has met as well are looked at once more. */
const acrossFolders = "duplicate-case";

async function withDuplicates(done: LintedFolders, job: LintJob): Promise<LintedFolders> {
  const files = new Map<string, string[]>();
  const seen = new Map<string, number>();
  for (const [index, { ids }] of done.parts.entries())
    for (const [id, ofId] of ids) {
      files.set(id, [...(files.get(id) ?? []), ...ofId]);
      if (seen.get(id) === undefined) seen.set(id, index);
    }
  const shared = [...files].filter(([id]) => done.parts.filter(({ ids }) => ids.has(id)).length > 1);
  const paths = shared.flatMap(([, ofId]) => ofId);
  if (paths.length === 0 || job.rules.only?.includes(acrossFolders) === false) return done;
  const again = await lintShare({ ...job, paths, rules: { ...job.rules, only: [acrossFolders] } });
  const isOld = ({ rule, file }: { readonly rule: string; readonly file: string }): boolean =>
    rule === acrossFolders && paths.includes(file);
  const parts = done.parts.map((part) => ({
    ...part,
    findings: part.findings.filter((finding) => !isOld(finding)),
    accepted: part.accepted.filter((finding) => !isOld(finding)),
  }));
  const found = again.parts.map(({ findings, accepted }) => ({ ...nothing, findings, accepted }));
  return { ...done, parts: [...parts, ...found] };
}

const nothing: LintedParts = {
  findings: [],
  accepted: [],
  completeness: [],
  visits: [],
  files: new Map(),
  ids: new Map(),
  settings: [],
};
