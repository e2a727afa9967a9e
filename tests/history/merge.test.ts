/** Two people's work on one record comes together part by part. */
import { isDeepStrictEqual } from "node:util";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { parse } from "yaml";
import { isKeyed, type Keyed, valueAt } from "../../src/cases/model/path.ts";
import { parseYaml } from "../../src/cases/yaml/parse-yaml.ts";
import { mergeRecords } from "../../src/history/merge.ts";
import { runs } from "../random.ts";
import { type Edit, edited, editedRecord } from "./edits.ts";

const base = `# yaml-language-server: $schema=x
format: 1
case: alder-2026-03-14-01
pig: {tag: "4127", sex: female}  # the worst of the pen
external:
  skin: normal
  ears:
respiratory:
  # palpated by both
  lungs:
    consolidation:
      left_cranial: 20  # cranial edge only
      left_middle: 35
    weight: 410 g
  trachea: normal
lymphoid: {tonsil: normal, spleen: normal}
samples:
  - {id: 01-A, from: respiratory.nares, at: 2026-03-14T09:20}
  - id: 01-B
    from: lymphoid.tonsil
    note: |
      two lines
      of it
# the end
`;

const edit = (text: string, ...pairs: (readonly [string, string])[]): string =>
  pairs.reduce((now, [from, to]) => {
    expect(now).toContain(from);
    return now.replace(from, to);
  }, text);

function merged(ours: string, theirs: string) {
  const result = mergeRecords("case", { base, ours, theirs });
  if (!result.ok) throw new Error("not merged");
  return result;
}

describe("a merge by parts", () => {
  it("takes neighbouring lines of two people, with their comments, in either direction", () => {
    const ours = edit(
      base,
      ["left_cranial: 20", "left_cranial: 30"],
      ["  skin: normal", "  skin: normal  # washed"],
    );
    const theirs = edit(
      base,
      ["left_middle: 35", "left_middle: 40  # and firm"],
      ["  ears:\n", "  # both\n  ears: normal\n"],
    );
    const both = edit(
      ours,
      ["left_middle: 35", "left_middle: 40  # and firm"],
      ["  ears:\n", "  # both\n  ears: normal\n"],
    );
    expect(merged(ours, theirs)).toEqual({ ok: true, text: both, conflicts: [] });
    expect(merged(theirs, ours)).toEqual({ ok: true, text: both, conflicts: [] });
  });

  it("takes two entries of one line in brackets", () => {
    const ours = edit(
      base,
      ["tonsil: normal", "tonsil: {not_examined: lost}"],
      ["sex: female", "sex: female, age: 58 d"],
    );
    const theirs = edit(
      base,
      ["spleen: normal}", "spleen: normal, thymus: normal}"],
      ['tag: "4127"', 'tag: "4128"'],
    );
    const { text, conflicts } = merged(ours, theirs);
    expect(conflicts).toEqual([]);
    expect(text).toContain("lymphoid: {tonsil: {not_examined: lost}, spleen: normal, thymus: normal}\n");
    expect(text).toContain('pig: {tag: "4128", sex: female, age: 58 d}  # the worst of the pen\n');
  });

  it("takes samples that both added, and what both wrote alike once", () => {
    const ours = edit(base, ["# the end", "  - {id: 01-C, from: blood}\n# the end"], ["410 g", "415 g"]);
    const theirs = edit(
      base,
      ["# the end", "  - {id: 01-D, from: csf}\n  - {id: 01-C, from: blood}\n# the end"],
      ["410 g", "415 g"],
    );
    const { text, conflicts } = merged(ours, theirs);
    expect(conflicts).toEqual([]);
    expect(text.match(/01-[A-D]/g)).toEqual(
      ["01-A", "01-B", "01-D", "01-C"].sort((a, b) => text.indexOf(a) - text.indexOf(b)),
    );
    expect(text.match(/01-C/g)).toHaveLength(1);
    expect(text.match(/415 g/g)).toHaveLength(1);
  });

  it("takes what one took out and leaves what the other did beside it", () => {
    const ours = edit(base, ["  - {id: 01-A, from: respiratory.nares, at: 2026-03-14T09:20}\n", ""]);
    const theirs = edit(base, ["from: lymphoid.tonsil", "from: lymphoid.spleen"]);
    expect(merged(ours, theirs)).toEqual({
      ok: true,
      text: edit(ours, ["from: lymphoid.tonsil", "from: lymphoid.spleen"]),
      conflicts: [],
    });
  });

  it("marks as little as it can where both changed one thing", () => {
    const ours = edit(base, ["left_cranial: 20", "left_cranial: 25"], ["410 g", "420 g"]);
    const theirs = edit(
      base,
      ["left_cranial: 20", "left_cranial: 30"],
      ["trachea: normal", "trachea: {state: normal, note: wet}"],
    );
    const { text, conflicts } = merged(ours, theirs);
    expect(conflicts).toEqual(["Lungs, consolidation, left cranial lobe: 25 % here, 30 % there"]);
    expect(text).toBe(
      edit(
        base,
        [
          "      left_cranial: 20  # cranial edge only\n",
          "<<<<<<< ours\n      left_cranial: 25  # cranial edge only\n=======\n      left_cranial: 30  # cranial edge only\n>>>>>>> theirs\n",
        ],
        ["410 g", "420 g"],
        ["trachea: normal", "trachea: {state: normal, note: wet}"],
      ),
    );
  });

  it("keeps what was changed where the other took it out, and says so", () => {
    const ours = edit(base, ["  trachea: normal\n", ""]);
    const theirs = edit(base, ["trachea: normal", "trachea: {not_examined: cut off}"]);
    const said = ["Trachea: taken out here and changed there; what was changed is kept"];
    expect(merged(ours, theirs)).toEqual({ ok: true, text: theirs, conflicts: said });
    const blank = edit(base, ["trachea: normal", "trachea:"]);
    expect(merged(blank, theirs)).toEqual({ ok: true, text: theirs, conflicts: said });
    const others = ["Trachea: taken out there and changed here; what was changed is kept"];
    expect(merged(theirs, ours)).toEqual({ ok: true, text: theirs, conflicts: others });
  });

  it("lets nobody answer for an organ in two ways", () => {
    const ours = edit(base, ["  trachea: normal", "  trachea: {state: normal, note: wet}"]);
    const theirs = edit(base, ["  trachea: normal", "  trachea: {not_examined: cut off}"]);
    const { conflicts } = merged(ours, theirs);
    expect(conflicts).toHaveLength(1);
  });

  it("leaves to git what it cannot take apart", () => {
    const anchored = edit(base, ["skin: normal", "skin: &n normal"], ["trachea: normal", "trachea: *n"]);
    expect(mergeRecords("case", { base, ours: anchored, theirs: edit(base, ["410 g", "411 g"]) }).ok).toBe(
      false,
    );
    const broken = edit(base, ["skin: normal", "skin: [normal"]);
    expect(mergeRecords("case", { base, ours: broken, theirs: base }).ok).toBe(false);
  });

  it("keeps the line ends of a file", () => {
    const ours = edit(base, ["410 g", "415 g"]).replaceAll("\n", "\r\n");
    const result = mergeRecords("case", {
      base,
      ours,
      theirs: edit(base, ["left_middle: 35", "left_middle: 40"]),
    });
    expect(result.ok && result.text).toBe(
      edit(base, ["410 g", "415 g"], ["left_middle: 35", "left_middle: 40"]).replaceAll("\n", "\r\n"),
    );
  });
});

describe("random edits of two people", () => {
  const two = fc.tuple(edited, fc.nat());
  /** Groups and lists on lines of their own as far down as that, and in brackets below. */
  const written = (record: object, lines: number): string => {
    const dense = (value: unknown, depth: number, indent: string): string => {
      if (depth === 0 || typeof value !== "object" || value === null || Object.keys(value).length === 0)
        return ` ${JSON.stringify(value)}\n`;
      const mark = Array.isArray(value) ? () => "-" : (key: string) => `${key}:`;
      const entries = Object.entries(value).filter(([, item]) => item !== undefined);
      return `\n${entries.map(([key, item]) => `${indent}${mark(key)}${dense(item, depth - 1, `${indent}  `)}`).join("")}`;
    };
    return dense(record, lines, "").slice(1);
  };

  it("come together in one record, whoever merges, and nothing is lost", () => {
    let merges = 0;
    fc.assert(
      fc.property(two, fc.integer({ min: 2, max: 6 }), ([{ example, edits }, cut], lines) => {
        const apart = (cut % edits.length) + 1;
        const [one, other] = [edits.slice(0, apart), edits.slice(apart)];
        const text = (some: readonly Edit[]): string => written(editedRecord(example, some), lines);
        const texts = { base: text([]), ours: text(one), theirs: text(other) };
        for (const [ours, theirs] of [
          [texts.ours, texts.theirs],
          [texts.theirs, texts.ours],
        ] as const) {
          const result = mergeRecords(example.kind, { base: texts.base, ours, theirs });
          expect(result).toMatchObject({ ok: true, conflicts: [] });
          expect(withoutEmpty(result.ok && parse(result.text))).toEqual(
            withoutEmpty(editedRecord(example, edits)),
          );
          merges++;
        }
      }),
      { numRuns: runs(100) },
    );
    expect(merges).toBeGreaterThan(100);
  });

  it("keep every comment and the layout of the example farms", () => {
    fc.assert(
      fc.property(two, ([{ example, edits }, cut]) => {
        const apart = (cut % edits.length) + 1;
        const text = (some: readonly Edit[]): string | undefined =>
          some.reduce<string | undefined>(
            (now, edit) => (now === undefined ? now : inText(now, edit)),
            example.text,
          );
        const [ours, theirs, both] = [edits.slice(0, apart), edits.slice(apart), edits].map(text);
        fc.pre(ours !== undefined && theirs !== undefined && both !== undefined);
        if (ours === undefined || theirs === undefined) return;
        expect(mergeRecords(example.kind, { base: example.text, ours, theirs })).toEqual({
          ok: true,
          text: both,
          conflicts: [],
        });
      }),
      { numRuns: runs(100) },
    );
  });
});

/** Groups and lists that were emptied; what two people emptied between them is gone with its key. */
const withoutEmpty = (value: unknown): unknown =>
  Array.isArray(value)
    ? value.map(withoutEmpty)
    : isKeyed(value)
      ? Object.fromEntries(
          Object.entries(value)
            .map(([key, item]) => [key, withoutEmpty(item)] as const)
            .filter(([, item]) => typeof item !== "object" || item === null || Object.keys(item).length > 0),
        )
      : value;

/** The text with one value written anew where it stands. */
function inText(text: string, edit: Edit): string | undefined {
  const parsed = parseYaml(text);
  if (!parsed.ok || edit.what !== "a value is another") return undefined;
  const copy = structuredClone(parsed.document.value) as Keyed;
  edit.apply(copy);
  const place = parsed.document.where(edit.at);
  const lines = text.split("\n");
  const line = lines[place.line - 1] ?? "";
  const written = JSON.stringify(valueAt(copy, edit.at));
  lines[place.line - 1] =
    line.slice(0, place.column - 1) + written + line.slice(place.column - 1 + place.length);
  const after = lines.join("\n");
  const read = parseYaml(after);
  return read.ok && isDeepStrictEqual(read.document.value, copy) ? after : undefined;
}
