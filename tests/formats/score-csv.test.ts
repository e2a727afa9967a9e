/** CSV: RFC 4180, one row a pig and scale, and no text that a spreadsheet would run as a formula. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { readCases } from "../../src/cases/index.ts";
import { csv } from "../../src/formats/page/csv.ts";
import { scoreCsv } from "../../src/formats/score/csv.ts";
import { scoreCases } from "../../src/score/index.ts";
import { put, temporaryFolder } from "../cases/temporary.ts";

/** A reader of CSV after RFC 4180, written for this test. */
function parsed(text: string): string[][] {
  const rows: string[][] = [];
  let row: string[] = [];
  let cell = "";
  let quoted = false;
  for (let i = 0; i < text.length; i++) {
    const char = text[i];
    if (quoted) {
      if (char === '"' && text[i + 1] === '"') cell += text[++i];
      else if (char === '"') quoted = false;
      else cell += char;
    } else if (char === '"') quoted = true;
    else if (char === "," || text.startsWith("\r\n", i)) {
      row.push(cell);
      cell = "";
      if (char !== ",") {
        rows.push(row);
        row = [];
        i++;
      }
    } else cell += char;
  }
  return rows;
}

const printable = fc.string({ unit: "grapheme-ascii", maxLength: 12 });

describe("csv", () => {
  it("comes back as it was, but for the apostrophe before a formula", () => {
    fc.assert(
      fc.property(fc.array(fc.array(printable, { minLength: 2, maxLength: 2 }), { maxLength: 6 }), (rows) => {
        const back = parsed(csv(["a", "b"], rows));
        expect(back).toEqual([
          ["a", "b"],
          ...rows.map((row) => row.map((cell) => (/^\s*[=+\-@]/.test(cell) ? `'${cell}` : cell))),
        ]);
        for (const cell of back.flat()) expect(cell).not.toMatch(/^\s*[=+\-@]/);
      }),
    );
  });

  it("leaves numbers alone, and an empty cell is empty", () => {
    expect(csv(["a", "b", "c"], [[-1.5, null, 1e-9]])).toBe("a,b,c\r\n-1.5,,1e-9\r\n");
  });

  it("shows what cannot be seen", () => {
    expect(csv(["a"], [["x\u001b[2Jy\n"]])).toBe("a\r\nx\\u{1b}[2Jy\\u{a}\r\n");
  });
});

describe("scores as a table", () => {
  const root = temporaryFolder();
  put(root, {
    "farm.yaml": "format: 1\nfarm: alder\n",
    "v/visit.yaml": "format: 1\nvisit: v-1\ndate: 2026-03-14\n",
    "v/a.yaml": `format: 1\ncase: a\npig: {group: nursery}\nrespiratory: {turbinates: {section: premolar-1, grades: {maff-1978: 3}}}\n`,
    "v/b.yaml": 'format: 1\ncase: b\nrespiratory: {turbinates: {not_examined: "head gone, sold"}}\n',
  });
  const archive = readCases(["v"], { from: root });
  const { cases } = scoreCases(archive, { scales: ["maff-1978", "polloni-2018"] });

  it("has one row a pig and scale, with the columns that docs/json.md names", () => {
    const [head = [], ...rows] = parsed(scoreCsv(cases, archive));
    expect(head.join(",")).toBe(
      "case,file,farm,visit,group,scale,value,max,class,confidence,missing,reason,least,greatest",
    );
    expect(rows).toHaveLength(4);
    const named = rows.map((row) => Object.fromEntries(row.map((cell, index) => [head[index], cell])));
    expect(named[0]).toMatchObject({
      case: "a",
      file: "v/a.yaml",
      farm: "alder",
      visit: "v-1",
      group: "nursery",
      scale: "maff-1978",
      value: "3",
      max: "5",
      class: "severe atrophy",
      least: "3",
      greatest: "3",
    });
    expect(named[1]).toMatchObject({
      value: "",
      class: "",
      missing: expect.stringContaining("respiratory.turbinates.left.dorsal; "),
    });
    expect(named[2]).toMatchObject({
      case: "b",
      group: "",
      value: "",
      reason: "not examined: head gone, sold",
    });
  });

  it("guards a file name that a spreadsheet would run", () => {
    const folder = temporaryFolder();
    put(folder, { "=a.yaml": "format: 1\ncase: a\nrespiratory: {turbinates: normal}\n" });
    const read = readCases(["."], { from: folder });
    const [, row = []] = parsed(scoreCsv(scoreCases(read, { scales: ["maff-1978"] }).cases, read));
    expect(row.slice(0, 2)).toEqual(["a", "'=a.yaml"]);
  });
});
