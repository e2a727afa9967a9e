/** Writes one text anew in a later version of the format; comments, order and layout stay. */
import { isDeepStrictEqual } from "node:util";
import type { FileKind } from "../cases/faults/validate.ts";
import { formatOf } from "../cases/files/format-version.ts";
import { formatPath, type Path, valueAt } from "../cases/index.ts";
import { isKeyed, type Keyed, put, remove } from "../cases/model/path.ts";
import type { SourceDocument } from "../cases/yaml/document.ts";
import { scalar } from "../cases/yaml/form.ts";
import { parseYaml } from "../cases/yaml/parse-yaml.ts";
import { commentsIn } from "../cases/yaml/yaml-document.ts";
import { applyEdits, lineStarts, type TextEdit } from "../fix/text-edit.ts";
import { entryEnd } from "../fix/with-value.ts";
import type { Migration, Step } from "./migration.ts";

/** The text in the newest format, or the step that cannot be taken without harm. */
export type MigratedText =
  | { readonly text: string }
  | { readonly step: Step; readonly line: number; readonly says: string };

/**
 * Takes a text through all migrations that it needs. Doing so again changes nothing.
 * @returns undefined where the text cannot be read, or is of a version of which no migration begins
 */
export function migrateText(
  text: string,
  kind: FileKind,
  migrations: readonly Migration[],
): MigratedText | undefined {
  let current = text;
  for (;;) {
    const read = keyedIn(current);
    const format = read === undefined ? undefined : formatOf(read.value);
    const next = migrations.find(({ from }) => from === format);
    if (read === undefined || (next === undefined && current === text)) return undefined;
    if (next === undefined) return { text: current };
    const steps = [...next.steps(kind, read.value), { path: ["format"], value: next.from + 1 }];
    // The deepest first, so that a path leads where it led when it was written down.
    for (const step of steps.sort((a, b) => b.path.length - a.path.length)) {
      const taken = stepTaken(current, step);
      if (taken === undefined)
        return { step, line: keyedIn(current)?.document.whereKey(step.path).line ?? 0, says: next.says };
      current = taken;
    }
  }
}

/** @returns undefined where anything but the step itself would change, or a comment would be lost */
function stepTaken(text: string, step: Step): string | undefined {
  const read = keyedIn(text);
  if (read === undefined || valueAt(read.value, step.path) === undefined) return undefined;
  const after = applyEdits(text, [editOf(text, read.document, step)]);
  const now = keyedIn(after);
  const isSame = isDeepStrictEqual(now?.value, expected(read.value, step));
  return isSame && isDeepStrictEqual(commentsIn(after), commentsIn(text)) ? after : undefined;
}

function editOf(text: string, document: SourceDocument, step: Step): TextEdit {
  const starts = lineStarts(text);
  const startOf = (line: number): number => starts[line - 1] ?? text.length;
  if (!("gone" in step)) {
    const isKey = "key" in step;
    const { line, column, length } = isKey ? document.whereKey(step.path) : document.where(step.path);
    const start = startOf(line) + column - 1;
    const become = isKey
      ? scalar(step.key)
      : typeof step.value === "string"
        ? scalar(step.value)
        : String(step.value);
    return { start, end: start + length, text: become };
  }
  const { line, column } = document.whereKey(step.path);
  const lines = text.split(/\r?\n/);
  const start = startOf(line);
  const stop = startOf(entryEnd(lines, line - 1, column - 1) + 1);
  const end = text.includes("\r\n") ? "\r\n" : "\n";
  const comments = commentsIn(text.slice(start, stop)).map((one) => `${" ".repeat(column - 1)}${one}${end}`);
  return { start, end: stop, text: comments.join("") };
}

/** The value that a step leads to. */
function expected(value: Keyed, step: Step): Keyed {
  const result = structuredClone(value);
  const { path } = step;
  if ("value" in step) put(result, path, step.value);
  else {
    const inside = valueAt(result, path);
    remove(result, path);
    if ("key" in step) put(result, [...path.slice(0, -1), step.key], inside);
  }
  return result;
}

function keyedIn(text: string): { readonly document: SourceDocument; readonly value: Keyed } | undefined {
  const parsed = parseYaml(text);
  if (!parsed.ok) return undefined;
  const { document } = parsed;
  return isKeyed(document.value) ? { document, value: document.value } : undefined;
}

/** `pig.tag: another name, mark` */
export function stepText(step: Step): string {
  const place = formatPath(step.path as Path);
  if ("key" in step) return `${place} gets another name, ${step.key}`;
  return "value" in step ? `${place} becomes ${step.value}` : `${place} goes`;
}
