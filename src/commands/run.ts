/** One call of a command: what it is asked about, where it says what, and how it ends. */

import { dirname, isAbsolute, relative, resolve } from "node:path";
import { type OpenAlarm, openAlarmsOf } from "../alarms/index.ts";
import {
  type Archive,
  type Fault,
  type ReadOptions,
  type ReadSettings,
  readCases,
  readSettings,
  type Shard,
} from "../cases/index.ts";
import { alarmNotice } from "../formats/alarm-notice.ts";
import { faultsText } from "../formats/faults-text.ts";
import { makeStyle, type Style } from "../formats/page/style.ts";
import { passedOverLines } from "../formats/passed-over.ts";
import { count } from "../words/listing.ts";
import { withoutCommands } from "../words/log-commands.ts";
import { visible } from "../words/visible.ts";
import { withFilesOfNames } from "./case-names.ts";
import { unlessEarlier } from "./earlier-result.ts";
import { clearLeftovers, leftoversIn } from "./leftovers.ts";
import { whyNamed } from "./named-files.ts";
import type { CommonOptions } from "./options.ts";
import { type ResultFile, resultFiles } from "./result-file.ts";
import { type Left, withoutCopies, withoutFormatFaults, withSoundScales } from "./sound-cases.ts";
import { readStandardInput } from "./standard-input.ts";
import { isStandardFile, progressOf, speak, writeStandardOutput } from "./streams.ts";
import { pageWidth, showsBars, styleFor } from "./terminal.ts";
import { UsageError } from "./usage-error.ts";
import {
  checkWritable,
  folderOf,
  type Keeps,
  type NewFile,
  newFolder,
  writeNew,
  writeWhole,
} from "./write-file.ts";

/** The text of a file as it is and as it would be. */
export interface Change {
  readonly file: string;
  readonly before: string;
  readonly after: string;
}

interface WrittenAs {
  readonly sample: string;
  readonly format: string;
}

/**
 * Whether people read a format: no line of it may be a command to the runner in whose log it stands. A diff is for people
 * in a log only; from a file programs apply it.
 */
const isForPeople = (format: string, inLog = false): boolean =>
  format === "text" || format === "markdown" || (format === "diff" && inLog);

/** What was read of an archive besides its cases. */
interface ReadBesides extends Pick<Archive, "unreadable" | "passedOver" | "pathsWithoutCases"> {
  readonly alarms: readonly OpenAlarm[];
}

interface Reading {
  readonly paths: readonly string[];
  readonly read: ReadOptions;
}

export class Run<Options extends CommonOptions = CommonOptions> {
  #failed = false;
  /** Whether a record was left as it is, although it was to be written. */
  #kept = false;
  readonly #cleared = new Set<string>();
  #heldNotice = (): string => "";

  constructor(
    public paths: readonly string[],
    readonly options: Options,
  ) {}

  /** Whether something that was asked for could not be read, found or used; the exit code is then 2. */
  get failed(): boolean {
    return this.#failed;
  }

  /** The file for the result, if it goes to one. */
  get output(): readonly ResultFile[] {
    return resultFiles([["--output", this.options.output]]);
  }

  /** Style of the result: never coloured in a file. */
  get style(): Style {
    return this.options.output === undefined
      ? styleFor(process.stdout, this.options.color)
      : makeStyle(false);
  }

  /** Style of what is said on standard error. */
  get spoken(): Style {
    return styleFor(process.stderr, this.options.color);
  }

  /** Characters that a line of the result may have. */
  get width(): number {
    return pageWidth(this.options.output !== undefined);
  }

  /** Whether bars can be shown. */
  get bars(): boolean {
    return showsBars();
  }

  /**
   * What belongs to the format asked for, of those a command knows.
   * @throws UsageError for a format that is not among them
   */
  format<Writer>(formats: Readonly<Record<string, Writer>>): Writer {
    const { format } = this.options;
    const writer = Object.hasOwn(formats, format) ? formats[format] : undefined;
    if (writer === undefined)
      throw new UsageError(
        `--format: there is no format "${format}"; there are ${Object.keys(formats).join(", ")}`,
      );
    return writer;
  }

  /** Says a line on standard error. */
  say(message: string): void {
    speak(`carcase: ${visible(message)}\n`);
  }

  /** Says on standard error what is wrong, if anything; what the command was asked for has then failed. */
  complain(text: string): void {
    if (text === "") return;
    this.#failed = true;
    speak(text);
  }

  /** Complains of files. */
  faults(faults: readonly Fault[]): void {
    this.complain(faultsText(faults, this.spoken, this.width));
  }

  /**
   * The whole archive under the paths. Open alarms, and what could not be read, are said on standard error.
   * @param how.noticed the result shows the notice of open alarms itself, so that it is not said twice; it is held for
   *   the case that there will be no result
   * @param how.counted the result counts the files that were passed over
   * @throws UsageError when a record names a file for `results`
   */
  archive({
    paths = this.paths,
    noticed = false,
    counted = false,
    results = this.output,
    shard,
  }: {
    paths?: readonly string[];
    noticed?: boolean;
    counted?: boolean;
    results?: readonly ResultFile[];
    shard?: Shard | undefined;
  } = {}): Archive {
    const { paths: found, read } = this.#reading(paths);
    const archive = readCases(found, shard === undefined ? read : { ...read, shard }, progressOf("folders"));
    const why = whyNamed(archive, results);
    if (why !== undefined) throw new UsageError(why);
    this.wasRead({ ...archive, alarms: openAlarmsOf(archive) }, { noticed, counted });
    return archive;
  }

  /**
   * What the readers are asked for.
   * @param from a copy of the current folder, in whose place it is read
   * @throws UsageError for options of standard input without it
   */
  reading(from?: string): Reading {
    const { paths, read } = this.#reading(this.paths);
    if (from === undefined) return { paths, read };
    const { config } = read;
    return {
      paths: paths.map((path) => (isAbsolute(path) ? relative(".", path) || "." : path)),
      read: { ...read, from, ...(typeof config === "string" && { config: resolve(config) }) },
    };
  }

  #reading(paths: readonly string[]): Reading {
    return { paths: withFilesOfNames(inputOnce(paths)), read: this.#readOptions(paths) };
  }

  /**
   * Says on standard error what is to be said of an archive that was read: open alarms, and what could not be read.
   * @param how.noticed the result shows the notice of open alarms itself; it is held for the case that there will be
   *   no result
   * @param how.counted the result counts the files that were passed over
   * @param how.again the archive was read before: what was said of it is not said again, and counts no more
   */
  wasRead(read: ReadBesides, { noticed = false, counted = false, again = false } = {}): void {
    const notice = (): string => alarmNotice(read.alarms, this.spoken, this.width);
    if (noticed) this.#heldNotice = notice;
    if (again) this.#failed = read.unreadable.length > 0 || read.pathsWithoutCases.length > 0;
    else {
      if (!noticed) speak(notice());
      this.faults(read.unreadable);
      for (const path of read.pathsWithoutCases)
        this.say(`no case at "${path}". A case is a .yaml file with keys such as case: and pig:.`);
      if (read.pathsWithoutCases.length > 0) this.#failed = true;
      if (!counted && !this.options.quiet)
        for (const line of passedOverLines(read.passedOver)) this.say(line);
    }
  }

  /** The archive without cases that have format faults, which are said. */
  soundArchive(paths = this.paths): Archive {
    return this.#left(withoutFormatFaults(this.archive({ paths })));
  }

  /**
   * Cases fit for counting: without those that have format faults, without scales of the practice that do not give
   * their own worked examples, and each case id once. What is left out is said, and the exit code is then 2.
   */
  async countable(paths = this.paths, shard?: Shard): Promise<Archive> {
    const archive = await withSoundScales(this.archive({ paths, shard }));
    return this.#left(withoutCopies(this.#left(withoutFormatFaults(archive))));
  }

  #left({ archive, faults }: Left): Archive {
    this.faults(faults);
    return archive;
  }

  /** The settings of the current folder, with the scales of the practice that they name; nothing is said. */
  settings(): ReadSettings {
    return readSettings(".", this.options.config);
  }

  /** The notice of open alarms that no result has shown. */
  heldNotice(): string {
    return this.#heldNotice();
  }

  /**
   * Writes the result to standard output or to `--output`; a file is there as a whole or not at all.
   * @param as.sample what an earlier result is known by, where the text itself does not do
   * @param as.format what the text is, where it is not what was asked for
   * @throws UsageError when the file cannot be written, or is no earlier result
   */
  write(text: string, { sample = text, format = this.options.format }: Partial<WrittenAs> = {}): void {
    if (this.output.length === 0)
      writeStandardOutput(isForPeople(format, !isStandardFile()) ? withoutCommands(text) : text);
    for (const one of this.output) this.writeResult(one, text, { sample, format });
  }

  /** Writes a result to a file. @throws UsageError when it cannot be written, or is no earlier result */
  writeResult({ option, file }: ResultFile, text: string, { sample, format }: WrittenAs): void {
    this.replace(file, isForPeople(format) ? withoutCommands(text) : text, unlessEarlier(option, sample));
  }

  /** Finds out early what would keep a result from being written. @throws UsageError as `writeResult` does */
  checkResult({ option, file }: ResultFile, sample: string): void {
    checkWritable(file, unlessEarlier(option, sample));
  }

  /** Writes a file, and clears away what earlier runs left in its folder. @throws UsageError as `writeWhole` does */
  replace(file: string, text: string | Uint8Array, keeps: Keeps): void {
    const folder = folderOf(file);
    if (folder !== undefined) this.clear([folder]);
    writeWhole(file, text, keeps);
  }

  /**
   * Writes the new text of a record, unless it was changed since it was read. Where it is not written that is said, and
   * the exit code is then 2.
   * @returns whether it was written
   */
  rewrite({ file, before, after }: Change): boolean {
    const why = `${file} was changed by somebody else since it was read, and is left as it is; run the command again`;
    try {
      this.replace(file, after, (there) => (there?.equals(Buffer.from(before)) === true ? undefined : why));
      return true;
    } catch (error) {
      if (!(error instanceof UsageError)) throw error;
      this.#kept = true;
      this.say(error.message);
      return false;
    }
  }

  /**
   * Writes files that are not there yet, all of them or none, into a folder that `folderForNew` named, and clears away
   * what earlier runs left there.
   * @throws UsageError as `writeNew` does
   */
  writeNew(files: readonly NewFile[], folder: string): void {
    this.clear([dirname(newFolder(folder)), folder]);
    writeNew(files, folder);
  }

  /** Clears away what runs that were cut off have left, and says so. */
  clear(folders: readonly string[]): void {
    const gone = folders
      .filter((folder) => !this.#cleared.has(folder))
      .flatMap((folder) => {
        this.#cleared.add(folder);
        return clearLeftovers(folder);
      });
    if (gone.length > 0 && !this.options.quiet)
      this.say(`cleared away ${leftovers(gone)}, left over from a run that was cut off`);
  }

  /** Says what runs that were cut off have left. @param folders with the names in them, where they are known */
  tellLeftovers(folders: ReadonlyMap<string, readonly string[] | undefined>): void {
    const left = [...folders].flatMap(([folder, names]) => leftoversIn(folder, names));
    if (left.length > 0)
      this.say(
        `${leftovers(left)}, left over from a run that was cut off; the records are whole. Delete what is left over, or carcase lint --fix does.`,
      );
  }

  /** The exit code: 2 where something failed, 1 where something was `found` that is to be put right, else 0. */
  end(found = false): number {
    if (this.#failed || this.#kept) return 2;
    return found ? 1 : 0;
  }

  #readOptions(paths: readonly string[]): ReadOptions {
    const { config, stdinFilename } = this.options;
    const settings = config === undefined ? {} : { config };
    if (paths.includes("-"))
      return {
        ...settings,
        input: { bytes: readStandardInput(), name: stdinFilename ?? "standard-input.yaml" },
      };
    if (stdinFilename !== undefined)
      throw new UsageError("--stdin-filename goes with - among the paths, which reads standard input");
    return settings;
  }
}

/** Standard input can be read once, however often it is named. */
const inputOnce = (paths: readonly string[]): readonly string[] =>
  paths.filter((path, index) => path !== "-" || paths.indexOf("-") === index);

/** `2026-03-14/.pig-01.yaml.….tmp`, or `3 files such as …` */
function leftovers(files: readonly string[]): string {
  const [first = ""] = files;
  const shown = relative(".", first);
  return files.length === 1 ? shown : `${count(files.length, "file")} such as ${shown}`;
}
