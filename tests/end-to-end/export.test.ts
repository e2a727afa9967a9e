/** The folder of tables comes whole or not at all, and the key stays away from it. */
import { existsSync, mkdirSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { put, smallCase, temporaryFolder } from "../cases/temporary.ts";
import { csvRowsOf, filesBelow } from "../tables/exported.ts";
import { carcase, wide } from "./run.ts";

const farm = (name: string): string => `format: 1\nfarm: ${name}\n`;
const visit = (name: string, date: string): string => `format: 1\nvisit: ${name}\ndate: ${date}\n`;
const archive = {
  "b-farm/farm.yaml": farm("b-farm"),
  "b-farm/v1/visit.yaml": visit("b-1", "2025-12-30"),
  "b-farm/v1/1.yaml": smallCase("b-1-1"),
  "b-farm/v2/visit.yaml": visit("b-2", "2026-01-02"),
  "b-farm/v2/1.yaml": smallCase("b-2-1"),
  "a-farm/farm.yaml": farm("a-farm"),
  "a-farm/v1/visit.yaml": visit("a-1", "2026-03-14"),
  "a-farm/v1/1.yaml": smallCase("a-1-1"),
  "a-farm/v2/visit.yaml": visit("a-2", "2026-09-14"),
  "a-farm/v2/1.yaml": smallCase("a-2-1", "pig: {tag: =1+1}\n"),
  "loose/1.yaml": smallCase("loose-1"),
};

function inFolder(files: Readonly<Record<string, string>> = archive) {
  const above = temporaryFolder();
  const folder = join(above, "work", "records");
  put(folder, files);
  const run = (...args: string[]) => carcase(["export", ...args], { cwd: folder, env: wide });
  return { above, folder, run };
}

const contents = (folder: string): Record<string, string> =>
  Object.fromEntries(
    filesBelow(folder).map((file) => [file.slice(folder.length + 1), readFileSync(file, "latin1")]),
  );

describe("carcase export", () => {
  it("asks for a folder, and knows its formats", () => {
    const { run, folder } = inFolder();
    const before = contents(folder);
    expect(run()).toMatchObject({ code: 2, err: expect.stringContaining("-o tables") });
    expect(run("-o", "out", "--format", "xlsx")).toMatchObject({
      code: 2,
      err: expect.stringContaining("there are csv, ndjson, parquet"),
    });
    expect(run("-o", "-")).toMatchObject({ code: 2 });
    expect(contents(folder)).toEqual(before);
  });

  it("says how much there is and where the meaning of it stands", () => {
    const { run, folder } = inFolder();
    const { code, out, err } = run("-o", "out");
    expect([code, out]).toEqual([0, ""]);
    expect(err).toContain("out: 5 cases of 4 visits in 9 tables (csv)");
    expect(err).toContain(join("out", "datapackage.json"));
    const rows = csvRowsOf(join(folder, "out", "cases.csv"));
    expect(rows.map((row) => [row.farm, row.year, row.visit, row.case])).toEqual([
      ["a-farm", "2026", "a-1", "a-1-1"],
      ["a-farm", "2026", "a-2", "a-2-1"],
      ["b-farm", "2025", "b-1", "b-1-1"],
      ["b-farm", "2026", "b-2", "b-2-1"],
      ["", "", "", "loose-1"],
    ]);
  });

  it("puts Parquet into folders by farm and year, two visits of one year into one file", () => {
    const { run, folder } = inFolder();
    run("-o", "out", "--format", "parquet");
    expect(Object.keys(contents(join(folder, "out", "cases")))).toEqual([
      "farm=__HIVE_DEFAULT_PARTITION__/year=__HIVE_DEFAULT_PARTITION__/part-0.parquet",
      "farm=a-farm/year=2026/part-0.parquet",
      "farm=b-farm/year=2025/part-0.parquet",
      "farm=b-farm/year=2026/part-0.parquet",
    ]);
  });

  it.each(["csv", "ndjson", "parquet"])(
    "gives the same bytes again, in any order of paths, as %s",
    (format) => {
      const { run, folder } = inFolder();
      run("-o", "out", "--format", format);
      const first = contents(join(folder, "out"));
      run("-o", "again", "--format", format, "loose", "b-farm", "a-farm", "a-farm/v1");
      expect(contents(join(folder, "again"))).toEqual(first);
      run("-o", "out", "--format", format);
      expect(contents(join(folder, "out"))).toEqual(first);
    },
  );

  it("takes the place of an earlier export whole, whatever its format, and of nothing else", () => {
    const { run, folder } = inFolder();
    run("-o", "out", "--format", "parquet");
    expect(run("-o", "out").code).toBe(0);
    expect(Object.keys(contents(join(folder, "out"))).filter((name) => name.endsWith(".parquet"))).toEqual(
      [],
    );
    writeFileSync(join(folder, "out", "notes.txt"), "mine");
    const before = contents(join(folder, "out"));
    expect(run("-o", "out")).toMatchObject({ code: 2, err: expect.stringContaining("nothing was written") });
    expect(contents(join(folder, "out"))).toEqual(before);
    expect(run("-o", "a-farm", ".")).toMatchObject({ code: 2 });
    expect(existsSync(join(folder, "a-farm", "farm.yaml"))).toBe(true);
  });

  it("leaves an earlier export where there is no case, and says what it left out of others", () => {
    const { run, folder } = inFolder();
    run("-o", "out");
    const before = contents(join(folder, "out"));
    mkdirSync(join(folder, "empty"));
    expect(run("-o", "out", "empty").code).toBe(2);
    expect(contents(join(folder, "out"))).toEqual(before);
    put(folder, {
      "a-farm/v1/2.yaml": smallCase("a-1-2", "pig: {sex: Female}\n"),
      "b-farm/v1/2.yaml": smallCase("a-1-1"),
    });
    const { code, err } = run("-o", "out");
    expect(code).toBe(2);
    expect(err).toContain("is not one of female, male, castrate");
    expect(err).toContain('"a-1-1" is already the case of');
    expect(csvRowsOf(join(folder, "out", "cases.csv"))).toHaveLength(5);
  });

  it("leaves out a file of results that has a fault, and says so", () => {
    const { run, folder } = inFolder({
      ...archive,
      "a-farm/v1/1.yaml": smallCase("a-1-1", "samples: [{id: S1, from: blood, for: [pcr]}]\n"),
      "a-farm/v1/results-1.yaml":
        "format: 1\nresults: a-1\nentries: [{sample: S1, test: pcr, agent: mycoplasma-hyopneumoniae, interpretation: positive}]\n",
      "a-farm/v1/results-2.yaml": "format: 1\nresults: a-1\nentries: [{sample: S1, test: blood-count}]\n",
    });
    const { code, err } = run("-o", "out");
    expect(code).toBe(2);
    expect(err).toContain("results-2.yaml");
    expect(csvRowsOf(join(folder, "out", "results.csv")).map((row) => [row.samples, row.cases])).toEqual([
      ["S1", "a-1-1"],
    ]);
  });

  it("hands no formula to a spreadsheet", () => {
    const { run, folder } = inFolder();
    run("-o", "out");
    expect(csvRowsOf(join(folder, "out", "cases.csv"))[1]?.tag).toBe("'=1+1");
  });
});

describe("the key", () => {
  it("is made once, for its owner alone, and gives the same pseudonyms again", () => {
    const { above, run, folder } = inFolder();
    const key = join(above, "keys", "k.key");
    mkdirSync(join(above, "keys"));
    expect(run("-o", "out", "--pseudonymise", key)).toMatchObject({
      code: 2,
      err: expect.stringContaining("add --new-key"),
    });
    expect(run("-o", "out", "--pseudonymise", key, "--new-key").code).toBe(0);
    if (process.platform !== "win32") expect(statSync(key).mode & 0o777).toBe(0o600);
    const first = contents(join(folder, "out"));
    expect(run("-o", "out", "--pseudonymise", key, "--new-key")).toMatchObject({
      code: 2,
      err: expect.stringContaining("leave out --new-key"),
    });
    run("-o", "out", "--pseudonymise", key);
    expect(contents(join(folder, "out"))).toEqual(first);
    expect(readFileSync(key, "utf8")).toMatch(/^[0-9a-f]{64}\n$/);
    run("-o", "out", "--pseudonymise", key, "--keep-days");
    expect(
      csvRowsOf(join(folder, "out", "cases.csv"))
        .map((row) => row.visit_on)
        .sort(),
    ).toEqual(["", "2025-12-30", "2026-01-02", "2026-03-14", "2026-09-14"]);
  });

  it.each([
    ["in the folder of tables", "../out/k.key"],
    ["beside it", "../k.key"],
    ["among the records", "a-farm/k.key"],
  ])("is refused %s", (_, key) => {
    const { run, folder } = inFolder();
    const { code, err } = run("-o", "../out", "--pseudonymise", key, "--new-key");
    expect(code).toBe(2);
    expect(err).toContain("keep the key in a folder of its own");
    expect([existsSync(join(folder, key)), existsSync(join(folder, "../out"))]).toEqual([false, false]);
  });

  it("is no passphrase, and goes with nothing but pseudonyms", () => {
    const { above, run } = inFolder();
    const key = join(above, "secret.txt");
    writeFileSync(key, "correct horse battery staple\n");
    const { code, err } = run("-o", "../out", "--pseudonymise", key);
    expect([code, err.includes("that is no key (64 hexadecimal digits)")]).toEqual([2, true]);
    expect(err).not.toContain("horse");
    expect(run("-o", "../out", "--new-key")).toMatchObject({
      code: 2,
      err: expect.stringContaining("--new-key goes with"),
    });
    expect(run("-o", "../out", "--keep-days")).toMatchObject({ code: 2 });
    rmSync(key);
  });

  it("leaves no order of names behind: rows come as the pseudonyms have it", () => {
    const pigs = Array.from({ length: 30 }, (_, index) => String(index).padStart(2, "0"));
    const { above, run, folder } = inFolder(
      Object.fromEntries(
        pigs.map((pig) => [
          `f/${pig}.yaml`,
          smallCase(`pig-${pig}`, `pig: {weight: ${Number(pig) + 1} kg}\n`),
        ]),
      ),
    );
    const key = join(above, "k.key");
    run("-o", "out", "--pseudonymise", key, "--new-key");
    const weights = csvRowsOf(join(folder, "out", "cases.csv")).map((row) => Number(row.weight));
    expect(weights).not.toEqual(pigs.map((pig) => Number(pig) + 1));
    expect([...weights].sort((a, b) => a - b)).toEqual(pigs.map((pig) => Number(pig) + 1));
  });
});
