/** Lints an archive folder by folder, each let go before the next is read; a large one on several threads. */
import { createRequire } from "node:module";
import { dirname, resolve } from "node:path";
import type * as Threads from "node:worker_threads";
import { type OpenAlarm, openAlarmsOf } from "../alarms/index.ts";
import { kindOf, sameFile } from "../cases/files/file-kind.ts";
import type { AskedFolder, Told } from "../cases/files/read-cases.ts";
import {
  ArchiveReader,
  allFaults,
  byFile,
  type Fault,
  type ReadEnd,
  type ReadOptions,
  readCases,
} from "../cases/index.ts";
import { gradeCheckFor, type LintedParts, Linter, type LintOptions } from "../lint/index.ts";
import { isWithin, type Part } from "./affected.ts";
import { holdHeapDown } from "./hold-heap.ts";
import { whyNamed } from "./named-files.ts";
import type { ResultFile } from "./result-file.ts";
import { withCheckedScales } from "./sound-cases.ts";
import { progressOf } from "./streams.ts";

/** What is linted: plain data, as it is handed to a thread. */
export interface LintJob {
  readonly paths: readonly string[];
  readonly read: ReadOptions;
  readonly rules: LintOptions;
  /** Files for results, which no case may name. */
  readonly results?: readonly ResultFile[];
  /** Only folders that lie in these; all where it is left out. */
  readonly within?: Part["within"];
}

/** Which of the folders a thread takes. */
export interface Share {
  readonly from: number;
  readonly to: number;
}

/** What was found in a share, and what was read besides: plain data. */
interface LintedShare extends Omit<ReadEnd, "scales"> {
  readonly part: LintedParts;
  readonly alarms: readonly OpenAlarm[];
  /** Why nothing may be written. */
  readonly refused: string | undefined;
}

/** The same of all folders. */
export interface LintedFolders {
  readonly parts: readonly LintedParts[];
  readonly alarms: readonly OpenAlarm[];
  readonly unreadable: readonly Fault[];
  readonly passedOver: readonly string[];
  readonly pathsWithoutCases: readonly string[];
  /** Where they lie. */
  readonly folders: readonly string[];
  /** Why nothing may be written: a record names a file for results. */
  readonly refused: string | undefined;
}

/** Lints the folders of one share. */
export const lintShare = (job: LintJob, share: Share): Promise<LintedShare> =>
  lintRead(new ArchiveReader(job.paths, job.read), job, share);

const foldersOf = ({ folders }: ArchiveReader, { within }: LintJob): readonly AskedFolder[] =>
  within === undefined ? folders : folders.filter(({ location }) => isWithin(sameFile(location), within));

async function lintRead(
  reader: ArchiveReader,
  job: LintJob,
  { from, to }: Share,
  told?: Told,
): Promise<LintedShare> {
  const { rules, results = [] } = job;
  const linter = new Linter(rules);
  const alarms: OpenAlarm[] = [];
  let refused: string | undefined;
  const folders = foldersOf(reader, job).slice(from, to);
  for (const [index, folder] of folders.entries()) {
    const read = reader.read(folder);
    // What cannot be told is a finding of its own here.
    alarms.push(...openAlarmsOf(read).filter(({ pattern }) => pattern !== undefined));
    linter.gradeCheck = await gradeCheckFor(read.cases);
    linter.add(read);
    refused ??= whyNamed({ ...read, scales: [] }, results);
    reader.letGo(folders[index + 1]);
    told?.(index + 1, folders.length);
  }
  const { scales, ...end } = await withCheckedScales(reader.end());
  for (const scale of scales) linter.addScale(scale);
  refused ??= whyNamed({ cases: [], scales }, results);
  return { ...end, part: linter.parts(), alarms, refused };
}

/** Modules of Node that take time to load and that a few files do not need. */
const ofNode = createRequire(import.meta.url);

/**
 * Lints all folders.
 * @param threads how many share the work. On two cores a second one gains little: V8 compiles and collects beside the
 *   first (docs/performance.md)
 */
export async function lintFolders(job: LintJob, threads = 1): Promise<LintedFolders> {
  const reader = new ArchiveReader(job.paths, job.read);
  const folders = foldersOf(reader, job);
  holdHeapDown(folders);
  // Standard input was read by this thread.
  const most = job.read.input === undefined ? threads : 1;
  const [first = { from: 0, to: 0 }, ...others] = shares(
    folders.map((folder) => folder.files.length),
    most,
  );
  const working = others.map((share) => lintInThread(job, share));
  const done = [await lintRead(reader, job, first, progressOf("folders")), ...(await Promise.all(working))];
  return withDuplicates(joined(done, folders, job), job);
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

function lintInThread(job: LintJob, share: Share): Promise<LintedShare> {
  return new Promise((done, reject) => {
    const { Worker } = ofNode("node:worker_threads") as typeof Threads;
    const worker = new Worker(ofNode.resolve("../../bin/lint-thread.js"), {
      workerData: { job, share },
    });
    worker.once("message", done);
    worker.once("error", reject);
    worker.once("exit", (code) => reject(new Error(`a thread of lint ended early (${code})`)));
  });
}

function joined(
  done: readonly LintedShare[],
  folders: readonly AskedFolder[],
  { within }: LintJob,
): LintedFolders {
  const [first = [], ...others] = done.map((one) => one.pathsWithoutCases);
  // Of a part, nobody wonders that some paths have nothing in it.
  const isTold = (path: string): boolean => within === undefined || kindOf(path) === "nothing";
  return {
    parts: done.map(({ part }) => part),
    alarms: done.flatMap((one) => one.alarms).sort(byFile),
    unreadable: allFaults(done),
    passedOver: done.flatMap((one) => one.passedOver).sort(),
    pathsWithoutCases: first.filter((path) => isTold(path) && others.every((paths) => paths.includes(path))),
    folders: [...new Set(folders.flatMap(({ files }) => files.map(({ location }) => dirname(location))))],
    refused: done.find(({ refused }) => refused !== undefined)?.refused,
  };
}

/** The one rule that looks across folders. */
const acrossFolders = "duplicate-case";

/**
 * Cases of one id are looked at once more, in their order, where another thread read one of them, or where they were not
 * read in their order: the first has the id, and the others are copies.
 */
function withDuplicates(done: LintedFolders, job: LintJob): LintedFolders {
  if (job.rules.only?.includes(acrossFolders) === false) return done;
  const ids = new Map<string, (readonly string[])[]>();
  for (const part of done.parts)
    for (const [id, files] of part.ids) ids.set(id, [...(ids.get(id) ?? []), files]);
  const paths = [...ids.values()]
    .filter((parts) => parts.length > 1 || parts.some((files) => !isAscending(files)))
    .flat(2);
  if (paths.length === 0) return done;
  const linter = new Linter({ ...job.rules, only: [acrossFolders] });
  const { input } = job.read;
  const isInput = (file: string): boolean => input !== undefined && resolve(file) === resolve(input.name);
  linter.add(
    readCases(
      paths.map((file) => (isInput(file) ? "-" : file)),
      job.read,
    ),
  );
  const isOld = ({ rule, file }: { readonly rule: string; readonly file: string }): boolean =>
    rule === acrossFolders && paths.includes(file);
  const parts = done.parts.map((part) => ({
    ...part,
    findings: part.findings.filter((finding) => !isOld(finding)),
    accepted: part.accepted.filter((finding) => !isOld(finding)),
  }));
  const { findings, accepted } = linter.parts();
  return { ...done, parts: [...parts, { ...nothing, findings, accepted }] };
}

const isAscending = (files: readonly string[]): boolean =>
  files.every((one, index) => index === 0 || (files[index - 1] ?? one) <= one);

const nothing: LintedParts = {
  findings: [],
  accepted: [],
  completeness: [],
  visits: [],
  files: new Map(),
  ids: new Map(),
  settings: [],
};
