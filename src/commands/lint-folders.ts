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
  type ToldBesides,
  witnessed,
} from "../cases/index.ts";
import { gradeCheckFor, type LintedParts, Linter, type LintOptions } from "../lint/index.ts";
import { isWithin, type Part } from "./affected.ts";
import { compileAsUsual, compileLater, compileLittle, holdHeapDown } from "./hold-heap.ts";
import { type Kept, LintCache, worthKeeping } from "./lint-cache.ts";
import { filesNamedBy, isAnyOf, whyNamed } from "./named-files.ts";
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
  /** Whether what is found is kept for another run. */
  readonly kept?: boolean;
  /** Only folders that lie in these; all where it is left out. */
  readonly within?: Part["within"];
}

/** Which of the folders a thread takes, by their index. */
export type Share = readonly number[];

/** What was found in one folder: plain data. */
interface LintedFolder {
  readonly part: LintedParts;
  readonly alarms: readonly OpenAlarm[];
  readonly told: ToldBesides;
  /** Files that its cases name. */
  readonly names: readonly string[];
}

/** What was found in a share, and what was read besides: plain data. */
interface LintedShare extends Omit<ReadEnd, "scales"> {
  readonly folders: readonly LintedFolder[];
  /** What is to be kept of them, where nobody has taken it yet. */
  readonly kept: readonly Kept<LintedFolder>[];
  /** Of scales of the practice. */
  readonly scales: LintedParts;
  /** Why nothing may be written. */
  readonly refused: string | undefined;
}

/** The same of all folders. */
export interface LintedFolders {
  readonly parts: readonly LintedParts[];
  /** Of these parts, what is of scales of the practice. */
  readonly scales: readonly LintedParts[];
  /** Why files around the cases could not be read, which comes first of what is unreadable. */
  readonly around: number;
  readonly alarms: readonly OpenAlarm[];
  readonly unreadable: readonly Fault[];
  readonly passedOver: readonly string[];
  readonly pathsWithoutCases: readonly string[];
  /** Where they lie, each with the names in it that are none of records, where they are known. */
  readonly folders: ReadonlyMap<string, readonly string[] | undefined>;
  /** Why nothing may be written: a record names a file for results. */
  readonly refused: string | undefined;
}

/** Lints the folders of one share. */
export const lintShare = (job: LintJob, share: Share): Promise<LintedShare> =>
  lintRead(witnessed(() => new ArchiveReader(job.paths, job.read)).value, job, share);

const foldersOf = ({ folders }: ArchiveReader, { within }: LintJob): readonly AskedFolder[] =>
  within === undefined ? folders : folders.filter(({ location }) => isWithin(sameFile(location), within));

async function lintRead(
  reader: ArchiveReader,
  job: LintJob,
  share: Share,
  { told, keep }: { readonly told?: Told; keep?(kept: Kept<LintedFolder>): void } = {},
): Promise<LintedShare> {
  const { rules, results = [] } = job;
  const all = foldersOf(reader, job);
  const folders = share.flatMap((index) => all[index] ?? []);
  const linted: LintedFolder[] = [];
  const untaken: Kept<LintedFolder>[] = [];
  let refused: string | undefined;
  for (const [index, folder] of folders.entries()) {
    const { read, told: besides, notes } = reader.readNoting(folder);
    const linter = new Linter(rules);
    // What cannot be told is a finding of its own here.
    const { value: open, notes: ofAlarms } = witnessed(() => openAlarmsOf(read));
    const alarms = open.filter(({ pattern }) => pattern !== undefined);
    linter.gradeCheck = await gradeCheckFor(read.cases);
    const { notes: alsoNoted } = witnessed(() => linter.add(read));
    const found = { part: linter.parts(), alarms, told: besides, names: filesNamedBy(read.cases) };
    linted.push(found);
    if (job.kept === true) {
      const kept = {
        identity: reader.identityOf(folder),
        location: folder.location,
        noted: [...new Set([...notes, ...ofAlarms, ...alsoNoted])].map(({ noted }) => noted),
        day: linter.isOfDay ? rules.today : undefined,
        found,
      };
      if (keep === undefined) untaken.push(kept);
      else keep(kept);
    }
    refused ??= whyNamed({ ...read, scales: [] }, results);
    reader.letGo(folders[index + 1]);
    told?.(index + 1, folders.length);
  }
  const { scales, ...end } = await withCheckedScales(reader.end());
  const linter = new Linter(rules);
  for (const scale of scales) linter.addScale(scale);
  refused ??= whyNamed({ cases: [], scales }, results);
  return { ...end, folders: linted, kept: untaken, scales: linter.parts(), refused };
}

/** Modules of Node that take time to load and that a few files do not need. */
const ofNode = createRequire(import.meta.url);

/**
 * Lints all folders.
 * @param threads how many share the work. On two cores a second one gains little: V8 compiles and collects beside the
 *   first (docs/performance.md)
 * @param isKept whether what was found is kept for the next run, and what an earlier one kept is used
 */
export async function lintFolders(job: LintJob, threads = 1, isKept = true): Promise<LintedFolders> {
  const reader = witnessed(() => new ArchiveReader(job.paths, job.read)).value;
  const folders = foldersOf(reader, job);
  const sizes = folders.map(({ files }) => files.length);
  const files = sum(sizes);
  // What is read in place of the archive, or of one of its files, is gone after this run.
  const isLasting = job.read.input === undefined && job.read.from === undefined;
  const cache =
    isKept && isLasting && files >= worthKeeping
      ? LintCache.open<LintedFolder>(job.rules, (question, path) => reader.answerTo(question, path))
      : undefined;
  holdHeapDown(files);
  const isWarm = cache !== undefined && cache.size >= folders.length / 2;
  if (isWarm) compileLittle(files);
  const known = new Map<number, LintedFolder>();
  if (cache !== undefined)
    for (const [index, folder] of folders.entries()) {
      const kept = cache.find(reader.identityOf(folder), folder.location);
      if (kept === undefined || isAnyOf(kept.found.names, job.results)) continue;
      known.set(index, kept.found);
      reader.tell(folder, kept.found.told, kept.read);
    }
  const left = [...folders.keys()].filter((index) => !known.has(index));
  const leftFiles = sum(left.map((index) => sizes[index] ?? 0));
  if (isWarm) compileAsUsual(leftFiles);
  else compileLater(leftFiles);
  // Standard input was read by this thread.
  const most = job.read.input === undefined ? threads : 1;
  const [first = [], ...others] = shares(left, sizes, most);
  const noting = { ...job, kept: cache !== undefined };
  const working = others.map((share) => lintInThread(noting, share));
  const ofThis = await lintRead(reader, noting, first, {
    told: progressOf("folders"),
    keep: (kept) => cache?.keep(kept),
  });
  const done = [ofThis, ...(await Promise.all(working))];
  for (const [index, one] of done.flatMap((share) => share.folders).entries())
    known.set(left[index] ?? -1, one);
  for (const one of done.flatMap((share) => share.kept)) cache?.keep(one);
  cache?.end();
  return withDuplicates(
    joined(
      done,
      folders.flatMap((_, index) => known.get(index) ?? []),
      reader,
      job,
    ),
    job,
  );
}

const sum = (values: readonly number[]): number => values.reduce((all, one) => all + one, 0);

/** Folders in their order, cut into so many shares of about as many files. */
function shares(folders: readonly number[], files: readonly number[], count: number): Share[] {
  const total = sum(folders.map((index) => files[index] ?? 0));
  const cut: number[][] = [[]];
  let before = 0;
  for (const index of folders) {
    if (before >= (total * cut.length) / count && cut.length < count) cut.push([]);
    cut.at(-1)?.push(index);
    before += files[index] ?? 0;
  }
  return cut;
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
  linted: readonly LintedFolder[],
  reader: ArchiveReader,
  job: LintJob,
): LintedFolders {
  const { within } = job;
  const places = foldersOf(reader, job).flatMap(({ files }) =>
    files.map(({ location }) => dirname(location)),
  );
  const [first = [], ...others] = done.map((one) => one.pathsWithoutCases);
  // Of a part, nobody wonders that some paths have nothing in it.
  const isTold = (path: string): boolean => within === undefined || kindOf(path) === "nothing";
  return {
    parts: [...linted.map(({ part }) => part), ...done.map(({ scales }) => scales)],
    scales: done.map(({ scales }) => scales),
    around: allFaults(done.map(({ around }) => ({ around, asked: [] }))).length,
    alarms: linted.flatMap((one) => one.alarms).sort(byFile),
    unreadable: allFaults(done),
    passedOver: done.flatMap((one) => one.passedOver).sort(),
    pathsWithoutCases: first.filter((path) => isTold(path) && others.every((paths) => paths.includes(path))),
    folders: new Map(places.map((folder) => [folder, reader.beside.get(folder)])),
    refused: done.find(({ refused }) => refused !== undefined)?.refused,
  };
}

/** The one rule that looks across folders. */
const acrossFolders = "duplicate-case";

/**
 * Cases of one id are looked at once more, in their order, where another thread read one of them, or where they were not
 * read in their order: the first has the id, and the others are copies.
 */
export function withDuplicates<Done extends Pick<LintedFolders, "parts">>(done: Done, job: LintJob): Done {
  if (job.rules.only?.includes(acrossFolders) === false) return done;
  const ids = new Map<string, (readonly string[])[]>();
  for (const part of done.parts)
    for (const [id, files] of part.ids) {
      const others = ids.get(id);
      if (others === undefined) ids.set(id, [files]);
      else others.push(files);
    }
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
  files: [],
  ids: [],
  settings: [],
};
