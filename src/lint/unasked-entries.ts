/** Entries of a baseline that a run says nothing about: their finding may be there all the same. */
import type { Archive } from "../cases/index.ts";
import type { BaselineEntry } from "../generated/baseline.types.ts";
import type { FileKey } from "./baseline.ts";
import { type LintOptions, levelFor, type Subject } from "./linter.ts";
import { rules } from "./rules/index.ts";

/**
 * An entry is unasked where its rule is off for its file, and where a value of the file, or of its visit, could not be
 * read: what stands there may be what the rule would have found.
 */
export function unaskedEntries(
  archive: Archive,
  options: LintOptions,
  key: FileKey,
): (entry: Pick<BaselineEntry, "file" | "rule">) => boolean {
  const { farms, visits, cases, scales } = archive;
  const subjects = new Map<string, Subject>(
    [...farms, ...visits, ...cases, ...scales].map((subject) => [key(subject.file), subject]),
  );
  return ({ file, rule: id }) => {
    const subject = subjects.get(file);
    const rule = rules.find((one) => one.id === id);
    if (subject === undefined || rule === undefined) return false;
    return levelFor(rule, subject, options) === "off" || around(subject).some(isUnsound);
  };
}

/** A file with those that a rule about it may read as well. */
function around(subject: Subject): readonly Unsound[] {
  if ("cases" in subject) return [subject, ...subject.cases];
  return "visit" in subject && subject.visit !== undefined ? [subject, subject.visit] : [subject];
}

type Unsound = Pick<Subject, "faults"> & { readonly unknownProtocol?: unknown };

const isUnsound = ({ faults, unknownProtocol }: Unsound): boolean =>
  faults.length > 0 || unknownProtocol !== undefined;
