/** Records as a good consultant writes them: no rule above a note speaks, apart from the complaints that wait for a mended rule. */
import { readdirSync, readFileSync, statSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, it } from "vitest";
import { parse } from "yaml";
import { readCases } from "../../src/cases/index.ts";
import { type Finding, lintCases } from "../../src/lint/index.ts";
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

const loud = (record: string): Finding[] => {
  const files = readdirSync(join(root, record)).filter((file) => file !== "source.yaml");
  const { findings } = lintCases(readCases(files.map((file) => join(root, record, file))));
  return findings.filter(({ level }) => level !== "note");
};

describe("honest records", () => {
  it("are at least forty", () => {
    expect(records.length).toBeGreaterThanOrEqual(40);
  });

  every("hear nothing above a note that is no known complaint", records, (record) => {
    const known = new Set(
      complaints.filter((one) => one.record === record).map(({ file, rule }) => `${file} ${rule}`),
    );
    const heard = loud(record).map(({ file, rule }) => `${file.slice(file.lastIndexOf("/") + 1)} ${rule}`);
    expect(heard.filter((one) => !known.has(one))).toEqual([]);
  });
});
