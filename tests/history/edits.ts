/** Random edits of records as people make them, each with the one change that it is. */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import fc from "fast-check";
import {
  isKeyed,
  type Keyed,
  type Path,
  pathsMeet,
  put,
  remove,
  valueAt,
} from "../../src/cases/model/path.ts";
import { parseYaml } from "../../src/cases/yaml/parse-yaml.ts";
import type { Change, RecordKind } from "../../src/history/changes.ts";
import { agentName } from "../../src/knowledge/agents.ts";
import { organById } from "../../src/knowledge/index.ts";
import { grouped } from "../../src/words/grouped.ts";

const root = fileURLToPath(new URL("../../cases-example", import.meta.url));

export interface Example {
  readonly file: string;
  readonly kind: RecordKind;
  readonly text: string;
  readonly record: Keyed;
}

const kindOf = (record: Keyed): RecordKind | undefined =>
  (["results", "case", "visit", "farm"] as const).find((kind) => kind in record);

/** Every record of the example farms. */
export const examples: readonly Example[] = (readdirSync(root, { recursive: true }) as string[])
  .filter((file) => /-farm.*\.yaml$/.test(file))
  .sort()
  .flatMap((file) => {
    const text = readFileSync(join(root, file), "utf8");
    const parsed = parseYaml(text);
    const record = parsed.ok ? parsed.document.value : undefined;
    const kind = isKeyed(record) ? kindOf(record) : undefined;
    return isKeyed(record) && kind !== undefined ? [{ file, kind, text, record }] : [];
  });

export interface Edit {
  readonly what: string;
  /** Where it is made, as the record is written. */
  readonly at: Path;
  /** What two edits of one record must not both touch. */
  readonly part: Path;
  readonly change: Change["change"];
  readonly path: Path;
  /** What the sentence must name. */
  readonly names: readonly string[];
  apply(record: Keyed): void;
}

interface Leaf {
  readonly path: Path;
  readonly value: string | number | boolean;
}

function leavesOf(value: unknown, path: Path = []): Leaf[] {
  if (Array.isArray(value)) return value.flatMap((item, index) => leavesOf(item, [...path, index]));
  if (isKeyed(value)) return Object.entries(value).flatMap(([key, item]) => leavesOf(item, [...path, key]));
  return typeof value === "string" || typeof value === "number" || typeof value === "boolean"
    ? [{ path, value }]
    : [];
}

/** The item of a list that a path leads into, or its first two keys. */
function partOf(path: Path): Path {
  const item = path.findIndex((step) => typeof step === "number");
  return path.slice(0, item < 0 ? 2 : item + 1);
}

const isInWords = (record: Keyed, { path, value }: Leaf): boolean =>
  typeof path.at(-1) === "number" &&
  !/\s/.test(String(value)) &&
  Array.isArray(valueAt(record, path.slice(0, -1)));

const isOrganAnswer = (kind: RecordKind, { path, value }: Leaf): boolean =>
  kind === "case" && value === "normal" && (path.length <= 2 || ["left", "right"].includes(String(path[2])));

/** An item of which hardly anything else is left when one key of it changes is another item. */
const isLean = (record: Keyed, { path }: Leaf): boolean => {
  const item = path.findLastIndex((step) => typeof step === "number");
  const holder = item < 0 ? undefined : valueAt(record, path.slice(0, item + 1));
  return isKeyed(holder) && Object.keys(holder).length < 3;
};

/** Where lists may have a mere text for an item with keys, the key of that text. */
const keyOfText = (path: Path): Path => {
  const key = (
    {
      morphologic: "text",
      aetiologic: "text",
      disease: "text",
      treatments: "with",
      recommendations: "do",
      photos: "file",
    } as Record<string, string>
  )[String(path.at(-2))];
  return typeof path.at(-1) === "number" && key !== undefined ? [...path, key] : path;
};

/** Places inside an organ go by its long form. */
const inLongForm = (kind: RecordKind, record: Keyed, path: Path): Path => {
  if (kind !== "case") return path;
  const [system, organ, ...inside] = path;
  if (organById(`${String(system)}.${String(organ)}`) === undefined) return path;
  const isBare = typeof inside[0] === "number" && Array.isArray(valueAt(record, path.slice(0, 2)));
  const isBareSide = typeof inside[1] === "number" && Array.isArray(valueAt(record, path.slice(0, 3)));
  const isPaired = organById(`${String(system)}.${String(organ)}`)?.definition.form === "paired";
  if (isBare) return [system ?? "", organ ?? "", "findings", ...inside];
  return isBareSide && isPaired && ["left", "right"].includes(String(inside[0]))
    ? [system ?? "", organ ?? "", inside[0] ?? "", "findings", ...inside.slice(1)]
    : path;
};

/** How the value ends in a sentence; a fingerprint is told by its beginning. */
const endOf = (path: Path, value: unknown): string =>
  /^[0-9a-f]{64}$/.test(String(value))
    ? String(value).slice(0, 8)
    : (path.at(-1) === "agent" ? agentName(String(value)) : String(value)).slice(-5);

/** All edits that one record allows, each of one thing. */
export function editsOf({ kind, record }: Example): Edit[] {
  const edits: Edit[] = [];
  const add = (edit: Omit<Edit, "part">): number => edits.push({ ...edit, part: partOf(edit.at) });
  for (const leaf of leavesOf(record)) {
    const { path, value } = leaf;
    const long = keyOfText(inLongForm(kind, record, path));
    if (isInWords(record, leaf)) {
      add({
        what: "a word is taken out of a list",
        at: path.slice(0, -1),
        change: "removed",
        path: inLongForm(kind, record, path),
        names: [String(value)],
        apply: (copy) => {
          const list = valueAt(copy, path.slice(0, -1));
          if (Array.isArray(list)) list.splice(list.indexOf(value), 1);
        },
      });
      continue;
    }
    if (isOrganAnswer(kind, leaf)) {
      const place = path.length === 1 ? [...path, "rest"] : path;
      const note = "kept for another day";
      add({
        what: "an organ was not examined after all",
        at: path,
        change: "changed",
        path: place,
        names: ["normal", note],
        apply: (copy) =>
          put(copy, path, path.length === 1 ? { rest: { not_examined: note } } : { not_examined: note }),
      });
      if (path.length === 2)
        add({
          what: "an organ is blank again",
          at: path,
          change: "removed",
          path,
          names: ["normal"],
          apply: (copy) => remove(copy, path),
        });
      continue;
    }
    if (isLean(record, leaf) || (path.length === 1 && ["case", "format"].includes(String(path[0])))) continue;
    const next = typeof value === "number" ? value + 1 : typeof value === "boolean" ? !value : `${value}9`;
    add({
      what: "a value is another",
      at: path,
      change: "changed",
      path: long,
      names:
        path.slice(-2).join(" ") === "measured sha256"
          ? ["tracing changed"]
          : [endOf(path, next), endOf(path, value)],
      apply: (copy) => put(copy, path, next),
    });
    if (typeof path.at(-1) === "string" && path.length > 1)
      add({
        what: "a value is taken out",
        at: path,
        change: "removed",
        path: long,
        names: [endOf(path, value)],
        apply: (copy) => remove(copy, path),
      });
  }
  const samples = record.samples;
  if (kind === "case") {
    const index = Array.isArray(samples) ? samples.length : 0;
    add({
      what: "a sample is added",
      at: ["samples", index],
      change: "added",
      path: ["samples", index],
      names: ["77-X", "liver"],
      apply: (copy) => {
        const item = { id: "77-X", from: "liver_pancreas.liver", into: "chilled" };
        if (Array.isArray(copy.samples)) copy.samples.push(item);
        else copy.samples = [item];
      },
    });
    if (Array.isArray(samples) && samples.length > 2)
      add({
        what: "samples stand in another order",
        at: ["samples"],
        change: "order",
        path: ["samples"],
        names: ["Samples"],
        apply: (copy) => {
          if (Array.isArray(copy.samples)) copy.samples.unshift(copy.samples.splice(1, 1)[0]);
        },
      });
    if (!("endocrine" in record))
      add({
        what: "an organ is added",
        at: ["endocrine", "thyroid"],
        change: "added",
        path: ["endocrine", "thyroid"],
        names: ["Thyroid", "normal"],
        apply: (copy) => {
          copy.endocrine = { thyroid: "normal" };
        },
      });
  }
  return edits;
}

/** Some records, each with up to three edits of different parts. */
export const edited: fc.Arbitrary<{ readonly example: Example; readonly edits: readonly Edit[] }> = fc
  .record({
    index: fc.nat(),
    picks: fc.array(fc.tuple(fc.nat(), fc.nat()), { minLength: 1, maxLength: 3 }),
  })
  .map(({ index, picks }) => {
    const example = examples[index % examples.length] as Example;
    // Every kind of edit is as likely as any other.
    const all = grouped(editsOf(example), ({ what }) => what);
    const kinds = [...all.values()];
    const edits: Edit[] = [];
    for (const [kind, one] of picks) {
      const some = kinds[kind % kinds.length] ?? [];
      const edit = some[one % some.length];
      if (edit !== undefined && edits.every(({ part }) => !pathsMeet(part, edit.part))) edits.push(edit);
    }
    return { example, edits };
  });

export const editedRecord = (example: Example, edits: readonly Edit[]): Keyed => {
  const copy = structuredClone(example.record);
  for (const edit of edits) edit.apply(copy);
  return copy;
};
