/** Short ways to read a text as a file of some kind. */

import type { FileKind } from "../../src/cases/faults/validate.ts";
import { checkDocument, keyedDocument } from "../../src/cases/files/read-file.ts";
import { decode } from "../../src/cases/files/read-text.ts";
import type { Fault } from "../../src/cases/index.ts";

export interface Reading {
  /** `3:7 message`, in the order of the text; `message` alone for a whole file. */
  readonly messages: string[];
  readonly faults: readonly Fault[];
  /** Undefined when the text could not be read. */
  readonly raw: Record<string, unknown> | undefined;
  readonly record: Record<string, unknown> | undefined;
}

/** Reads bytes or text like a file. */
export function reading(content: string | Uint8Array, kind: FileKind = "case"): Reading {
  const bytes = typeof content === "string" ? new TextEncoder().encode(content) : content;
  const read = keyedDocument("file.yaml", decode(bytes));
  if (!read.ok)
    return { messages: lines(read.faults), faults: read.faults, raw: undefined, record: undefined };
  const { placed, raw, record } = checkDocument(kind, "file.yaml", read.result);
  return { messages: lines(placed), faults: placed, raw, record };
}

/** Reads a case of which only some keys are given. */
export const readingCase = (keys: string): Reading => reading(`format: 1\ncase: x-1\n${keys}`);

const lines = (faults: readonly Fault[]): string[] =>
  faults.map(({ line, column, message }) => (line === 0 ? message : `${line}:${column} ${message}`));
