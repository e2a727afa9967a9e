/** A file of another version of the format is refused as a whole, and nothing is guessed of what it says. */
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { otherFormat } from "../../src/cases/files/format-version.ts";
import { readCases } from "../../src/cases/index.ts";
import { parseBaseline } from "../../src/lint/baseline.ts";
import { put, smallCase, temporaryFolder } from "./temporary.ts";

describe("another version of the format", () => {
  it("is told by its number, whichever way it is written", () => {
    for (const format of [2, "2", 17])
      expect(otherFormat({ format })).toContain("newer than what this carcase reads");
    for (const format of [1, "1", undefined, null, 1.5, -1, 0, "two", [2], true])
      expect(otherFormat({ format })).toBeUndefined();
  });

  it("of before is sent to carcase migrate", () => {
    expect(otherFormat({ format: 1 }, 2)).toBe(
      "format: 1 is older than what this carcase reads, format 2. carcase migrate writes the file anew; do not change the number by hand.",
    );
  });

  it("is not read in part, of whatever kind the file is", () => {
    const folder = temporaryFolder();
    const newer = (text: string): string => text.replace("format: 1", "format: 2");
    put(folder, {
      "carcase.yaml": "format: 2\nlevel: 90 %\n",
      "farm.yaml": "format: 2\nfarm: alder\n",
      "a/visit.yaml": "format: 2\nvisit: alder-a\ndate: 2026-03-14\n",
      "a/pig-01.yaml": newer(smallCase("alder-a-01", "pgi: {sex: female}\n")),
      "b/visit.yaml": "format: 1\nvisit: alder-b\ndate: 2026-03-14\n",
      "b/results.yaml": "format: 2\nresults: alder-b\nentries: []\n",
      "b/pig-01.yaml": smallCase("alder-b-01"),
    });
    const { cases, unreadable } = readCases(["."], { from: folder });
    expect(cases.map(({ id }) => id)).toEqual(["alder-b-01"]);
    expect(unreadable.map(({ file, line, message }) => [file, line, message.slice(0, 19)])).toEqual(
      ["carcase.yaml", "farm.yaml", "a/visit.yaml", "b/results.yaml", "a/pig-01.yaml"]
        .sort((x, y) => Number(x === "a/pig-01.yaml") - Number(y === "a/pig-01.yaml") || (x < y ? -1 : 1))
        .map((file) => [join(file), 1, "format: 2 is newer "]),
    );
  });

  it("is refused as a baseline", () => {
    expect(parseBaseline('{"format": 2, "entries": []}')).toContain("format: 2 is newer");
  });
});
