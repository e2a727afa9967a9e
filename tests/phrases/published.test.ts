/** Notes after published descriptions become the entries that were written by hand, and what nobody can know is refused. */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { parse } from "yaml";
import { valueAt } from "../../src/cases/index.ts";
import { put } from "../../src/cases/model/path.ts";
import { joined, readNote } from "../../src/phrases/index.ts";
import { grouped } from "../../src/words/grouped.ts";
import { every } from "../every.ts";

interface Phrase {
  readonly half: "work" | "blind";
  readonly source: string;
  readonly typed: string;
  readonly entry: object;
}

const folder = new URL("../fixtures/phrases/", import.meta.url);
const { phrases, refused } = parse(readFileSync(new URL("phrases.yaml", folder), "utf8")) as {
  readonly phrases: readonly Phrase[];
  readonly refused: readonly { readonly typed: string; readonly says: string }[];
};

/** The entry that a note becomes, or what was not understood. */
function entryOf(typed: string): unknown {
  const { told, misread } = readNote(typed);
  if (misread.length > 0) return misread.map(({ message }) => message);
  const entry = {};
  for (const [organ, some] of grouped(told, (one) => one.organ)) {
    const one = joined(undefined, some);
    if ("fault" in one) return one.fault;
    if (valueAt(entry, [organ.system]) === undefined) put(entry, [organ.system], {});
    put(entry, [...organ.path], one.entry);
  }
  return entry;
}

describe("sixty phrases of published descriptions", () => {
  for (const half of ["work", "blind"] as const)
    every(
      `become the entries that were written by hand: the half ${half}`,
      phrases.filter((phrase) => phrase.half === half),
      ({ typed, entry }) => expect(entryOf(typed)).toEqual(entry),
      ({ typed }) => typed,
    );

  it("are sixty, each of another wording", () => {
    expect(new Set(phrases.map(({ typed }) => typed)).size).toBe(60);
  });
});

describe("twenty notes that nobody can know", () => {
  every(
    "are refused, with what to write",
    refused,
    ({ typed, says }) => {
      const read = entryOf(typed);
      expect(Array.isArray(read) || typeof read === "string", JSON.stringify(read)).toBe(true);
      expect(String(read)).toContain(says);
    },
    ({ typed }) => typed,
  );
});
