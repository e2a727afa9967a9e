/** The photographs and tracings that a record names, and whether they are those that were signed off. */
import { readInput } from "../cases/files/input.ts";
import { besideCase, isElsewhere, photographs, tracings } from "../record/index.ts";
import { sha256 } from "../words/sha256.ts";
import type { Seal } from "./seal.ts";
import type { Sealable } from "./sealed-text.ts";

/** A photograph is smaller; beyond this it is something else. */
const most = 200 * 1024 * 1024;

/** Each file once, in the order of their names. */
export const namedFiles = (subject: Sealable): readonly string[] =>
  "organ" in subject
    ? [...new Set([...photographs(subject), ...tracings(subject)].map(({ file }) => file))].sort()
    : [];

/** The fingerprint of a file that a record names, or why there is none. */
export type FileRead = { readonly sha256: string } | { readonly why: string };

export function fingerprintOf(subject: Sealable, file: string): FileRead {
  if (!("organ" in subject)) return { why: "a visit names no files" };
  if (isElsewhere(file)) return { why: "it does not lie beside the case" };
  const read = readInput(besideCase(subject, file), most);
  return read.ok ? { sha256: sha256(read.bytes) } : { why: read.message };
}

/** A file that is not the one that was signed off. */
export interface OtherFile {
  readonly file: string;
  readonly why: string;
}

/** @param seal of a record that did not change since */
export function otherFiles(subject: Sealable, { files = {} }: Pick<Seal, "files">): OtherFile[] {
  const added = namedFiles(subject)
    .filter((file) => files[file] === undefined)
    .map((file) => ({ file, why: "the seal says nothing of it" }));
  return [
    ...Object.entries(files).flatMap(([file, sealed]) => {
      const now = fingerprintOf(subject, file);
      if ("why" in now) return [{ file, why: now.why }];
      return now.sha256 === sealed ? [] : [{ file, why: "it is not the file that was sealed" }];
    }),
    ...added,
  ];
}
