/** Files of results lie beside a visit and are known by name and keys; what is wrong with one is told at its line. */
import { describe, expect, it } from "vitest";
import { readCases } from "../../src/cases/index.ts";
import { lintCases } from "../../src/lint/index.ts";
import { resultsOf } from "../../src/record/index.ts";
import { put, smallCase, temporaryFolder } from "../cases/temporary.ts";

const visit = "format: 1\nvisit: v\ndate: 2026-04-20\n";
const results = (entries: string, more = ""): string => `format: 1\nresults: v\n${more}entries: ${entries}\n`;

function read(files: Readonly<Record<string, string>>, paths: readonly string[] = ["."]) {
  const root = temporaryFolder();
  put(root, files);
  return readCases(paths, { from: root });
}
const said = ({ unreadable }: ReturnType<typeof read>): string[] =>
  unreadable.map(({ file, message }) => `${file}: ${message}`);
/** What lint says of files of results. */
const inResults = (archive: ReturnType<typeof read>): string[] =>
  lintCases(archive)
    .findings.filter(({ file }) => file.startsWith("results"))
    .map(({ line, message }) => `${line}: ${message}`);

describe("files of results", () => {
  it("are read beside their visit, in the order of their names, and those of other programs are not", () => {
    const archive = read({
      "visit.yaml": visit,
      "a.yaml": smallCase("a"),
      "results-pcr.yaml": results("[{sample: A, test: pcr, agent: prrsv, interpretation: negative}]"),
      "results.yml": results("[{sample: B, test: culture, interpretation: negative}]"),
      "results-export.yaml": "version: 2\nrows: []\n",
      "resultsheet.yaml": smallCase("sheet"),
    });
    expect(said(archive)).toEqual([]);
    expect(archive.cases.map(({ id }) => id)).toEqual(["a", "sheet"]);
    expect(archive.visits[0]?.results.map(({ file }) => file)).toEqual(["results-pcr.yaml", "results.yml"]);
    expect(archive.visits.flatMap(resultsOf).map(({ samples }) => samples)).toEqual([["A"], ["B"]]);
    expect(archive.cases[0]?.visit?.results).toHaveLength(2);
  });

  it("can be named alone, and their visit is then looked at", () => {
    const files = { "visit.yaml": visit, "results.yaml": results("[{sample: A, tests: pcr}]") };
    const archive = read(files, ["results.yaml"]);
    expect(archive.pathsWithoutCases).toEqual([]);
    expect(inResults(archive)).toEqual(["3: entries[0].tests: no such key. Did you mean test?"]);
  });

  it("need a visit beside them and a name that begins with results", () => {
    expect(said(read({ "results.yaml": results("[]"), "a.yaml": smallCase("a") }))).toEqual([
      "results.yaml: it holds results of a laboratory, and no visit.yaml lies beside it; put it into the folder of the visit that its samples are of",
    ]);
    expect(said(read({ "visit.yaml": visit, "lab.yaml": results("[]"), "a.yaml": smallCase("a") }))).toEqual([
      "lab.yaml: by its keys it holds results of a laboratory, which are read only from a file whose name begins with results, such as results.yaml or results-pcr.yaml; rename it",
    ]);
  });

  it("may have samples that are numbered, and keep the sound entries where one is at fault", () => {
    const archive = read({
      "visit.yaml": visit,
      "results.yaml": results("[{sample: 1, test: pcr, agent: prrs}, {pool: [2, 3], test: culture}]"),
    });
    const [file] = archive.visits[0]?.results ?? [];
    expect(file?.record.entries.map(({ sample, pool }) => sample ?? pool)).toEqual(["1", ["2", "3"]]);
    expect(file?.faults.map(({ line, message }) => `${line}: ${message}`)).toEqual([
      '3: entries[0].agent: "prrs" is not a word known here. Did you mean prrsv?',
    ]);
  });

  it("that cannot be read are told, and so is one that names no visit", () => {
    expect(said(read({ "visit.yaml": visit, "results.yaml": "format: 1\nresults: [v\n" }))).toHaveLength(1);
    const archive = read({ "visit.yaml": visit, "results.yaml": "format: 1\nentries: []\n" });
    expect(inResults(archive)).toEqual([
      "1: results is missing. Write it: The visit that the samples are of, by its id, such as alder-2026-03-14.",
    ]);
  });

  it("are left out where the settings exclude them", () => {
    const archive = read({
      "carcase.yaml": "format: 1\nexclude: [results-old.yaml]\n",
      "visit.yaml": visit,
      "results-old.yaml": results("[]"),
    });
    expect([archive.visits[0]?.results, said(archive)]).toEqual([[], []]);
  });
});
