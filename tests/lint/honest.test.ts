/** Records as a good consultant writes them: no rule above a note speaks, apart from the complaints that wait for a mended rule. */
import { readdirSync, readFileSync, statSync } from "node:fs";
import { basename, join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { parse } from "yaml";
import { type Archive, readCases } from "../../src/cases/index.ts";
import { ageClasses } from "../../src/knowledge/index.ts";
import { lintCases } from "../../src/lint/index.ts";
import { every } from "../every.ts";

const root = fileURLToPath(new URL("../fixtures/honest/", import.meta.url));

interface Complaint {
  readonly record: string;
  readonly file: string;
  readonly rule: string;
  readonly at: string;
}

const { complaints } = parse(readFileSync(join(root, "complaints.yaml"), "utf8")) as {
  complaints: Complaint[];
};
const records = readdirSync(root).filter((name) => statSync(join(root, name)).isDirectory());

const read = (record: string): Archive => {
  const files = readdirSync(join(root, record)).filter((file) => file !== "source.yaml");
  return readCases(files.map((file) => join(root, record, file)));
};
const archives = new Map(records.map((record) => [record, read(record)]));

const loud = (record: string): string[] => {
  const { findings } = lintCases(archives.get(record) ?? read(record));
  return findings
    .filter(({ level }) => level !== "note")
    .map(({ file, rule }) => `${basename(file)} ${rule}`)
    .sort();
};

describe("honest records", () => {
  it("without a complaint are at least forty", () => {
    const complained = new Set(complaints.map(({ record }) => record));
    expect(records.filter((record) => !complained.has(record)).length).toBeGreaterThanOrEqual(40);
  });

  it("are of all age classes", () => {
    const seen = new Set<string | undefined>(
      [...archives.values()].flatMap(({ cases }) => cases.map((one) => one.ageClass)),
    );
    expect(Object.keys(ageClasses.classes).filter((name) => !seen.has(name))).toEqual([]);
  });

  every("hear nothing above a note but the known complaints", records, (record) => {
    const known = complaints.filter((one) => one.record === record);
    expect(loud(record)).toEqual(known.map(({ file, rule }) => `${file} ${rule}`).sort());
  });
});
