/** `carcase seal`: who signed a record off, and who signed for what was changed in it since. */
import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import { find } from "../cases/files/find.ts";
import type { Archive, Fault } from "../cases/index.ts";
import { withSeal } from "../fix/index.ts";
import { lintCases } from "../lint/index.ts";
import {
  fingerprintOf,
  fingerprintWith,
  namedFiles,
  otherFiles,
  type Seal,
  type Sealable,
  sealedStateOf,
} from "../seals/index.ts";
import { count } from "../words/listing.ts";
import { visible } from "../words/visible.ts";
import { writeDiff } from "./fix.ts";
import { nameOneCase } from "./one-case.ts";
import type { CommonOptions } from "./options.ts";
import type { Change, Run } from "./run.ts";
import { signatureOf } from "./ssh-signature.ts";
import { dayOfRun, minuteOfRun } from "./terminal.ts";
import { UsageError } from "./usage-error.ts";

export interface SealOptions extends CommonOptions {
  readonly by?: string;
  readonly amend?: true;
  readonly because?: string;
  readonly sign?: string;
  readonly dryRun?: true;
}

export function seal(run: Run<SealOptions>): number {
  const { quiet, dryRun, sign } = run.options;
  const entry = entryOf(run);
  const archive = run.archive();
  const records = sealableOf(archive, run.paths);
  const open = records.filter((one) => isToSign(one, run));
  run.faults([...new Set(open.flatMap(faultsOf))]);
  const seals = open.map((one) => ({ one, seal: withFiles(one, entry, run) }));
  if (run.failed) {
    run.say("nothing was sealed; put right what is said above first");
    return run.end();
  }
  const changes = seals.map(({ one, seal: unsigned }) =>
    changeOf(one, sign === undefined ? unsigned : { ...unsigned, signature: signatureOf(unsigned, sign) }),
  );
  if (dryRun) return writeDiff(changes, run);
  for (const change of changes)
    if (run.rewrite(change) && !quiet) run.write(`sealed ${visible(change.file)}\n`, { format: "text" });
  if (!quiet) sayRest(run, archive, { left: records.length - open.length, changes });
  return run.end();
}

/** @throws UsageError for options that do not go together */
function entryOf({
  paths,
  options: { by = "", amend, because = "" },
}: Run<SealOptions>): Omit<Seal, "sha256"> {
  if (paths.length === 0) throw nameOneCase((file) => `carcase seal ${file} --by "A. Berg"`);
  if (paths.includes("-")) throw new UsageError("name the file; a seal is not written into standard input");
  if (by.trim() === "") throw new UsageError('say who signs: --by "A. Berg"');
  if (amend === undefined && because !== "")
    throw new UsageError(
      "--because goes with --amend: it says why a record was changed after it was signed off",
    );
  if (amend && because.trim() === "")
    throw new UsageError('--amend: say why it was changed: --because "weight was of the sow"');
  return { by: by.trim(), at: minuteOfRun(), ...(amend && { because: because.trim() }) };
}

/** The cases and visits that were asked for; a visit that a case only belongs to is none of them. */
export function sealableOf({ cases, visits }: Archive, paths: readonly string[]): Sealable[] {
  const asked = new Set(paths.flatMap((path) => find(path, ".").files.map(({ file }) => resolve(file))));
  return [...visits.filter(({ file }) => asked.has(resolve(file))), ...cases].sort((a, b) =>
    a.file < b.file ? -1 : 1,
  );
}

/** What would change with what is put right: faults of the record, and of the values that it has from its visit. */
const faultsOf = (one: Sealable): readonly Fault[] => [
  ...one.faults,
  ...("organ" in one ? (one.visit?.faults ?? []).filter(({ intended }) => intended[0] === "defaults") : []),
];

/** Whether there is something to sign; what must not be signed as asked is complained of. */
function isToSign(one: Sealable, run: Run<SealOptions>): boolean {
  const { file, document } = one;
  if (document.isHidden) {
    run.complain(`${visible(file)} lies outside the repository and is not written into\n`);
    return false;
  }
  const { state, seal: last } = sealedStateOf(one);
  if (last === undefined) return run.options.amend !== true;
  const [other] = state === "broken" ? [] : otherFiles(one, last);
  const isChanged = state === "broken" || other !== undefined;
  if (isChanged && run.options.amend !== true) {
    const what = other === undefined ? file : `${file}: ${other.file}`;
    run.complain(
      `${visible(what)} was changed since ${visible(last.by)} signed it on ${last.at.slice(0, 10)}; --amend --because TEXT signs the change\n`,
    );
    return false;
  }
  return isChanged;
}

/** The entry with the files that a record names. Whatever is not there cannot be signed. */
function withFiles(one: Sealable, entry: Omit<Seal, "sha256">, run: Run<SealOptions>): Seal {
  const files: Record<string, string> = {};
  for (const file of namedFiles(one)) {
    const read = fingerprintOf(one, file);
    if ("sha256" in read) files[file] = read.sha256;
    else run.complain(`${visible(`${one.file} names ${file}`)}, which cannot be sealed: ${read.why}\n`);
  }
  const named = Object.keys(files).length === 0 ? entry : { ...entry, files };
  const { seals } = sealedStateOf(one);
  return { ...named, sha256: fingerprintWith(one, [...seals, named]) };
}

/** @throws UsageError where the seal cannot be written without harm; nothing was written then */
function changeOf({ file, document }: Sealable, entry: Seal): Change {
  const after = withSeal(document.text, entry);
  if (after === undefined)
    throw new UsageError(
      `${file} is written in a way in which nothing can be added safely behind its last line; nothing was sealed. A key seals: left blank goes out; so does what stands behind ...`,
    );
  const bom = readFileSync(file, "utf8").startsWith(mark) ? mark : "";
  return { file, before: bom + document.text, after: bom + after };
}

/** The byte order mark of a file stays. */
const mark = "\ufeff";

/** What was left alone, and what the linter still asks of what is signed now. */
function sayRest(
  run: Run,
  archive: Archive,
  { left, changes }: { readonly left: number; readonly changes: readonly Change[] },
): void {
  if (left > 0)
    run.say(
      changes.length === 0
        ? "there is nothing to sign: no record changed since it was signed off"
        : `${count(left, "record")} left alone: nothing changed since the signature`,
    );
  const signed = new Set(changes.map(({ file }) => file));
  const open = lintCases(archive, { today: dayOfRun() }).findings.filter(
    ({ level, file, rule }) => level === "error" && signed.has(file) && rule !== "sealed-record-changed",
  ).length;
  if (open > 0)
    run.say(
      `${count(open, "error")} of the linter ${open === 1 ? "stands" : "stand"} open in what was signed; carcase lint says where`,
    );
}
