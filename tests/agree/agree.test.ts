import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { afterEach, describe, expect, it } from "vitest";
import { agree, caseReadings, type Reading, tableReadings } from "../../src/agree/index.ts";
import { comparePair, type Two } from "../../src/agree/pair.ts";
import { readTable } from "../../src/agree/table-readings.ts";
import { readCases } from "../../src/cases/index.ts";
import { agreeCsv } from "../../src/formats/agree/csv.ts";
import { agreeJson } from "../../src/formats/agree/json.ts";
import { agreeText } from "../../src/formats/agree/text.ts";
import { makeStyle } from "../../src/formats/page/style.ts";
import { organs, publishedAgreement } from "../../src/knowledge/index.ts";
import { scales } from "../../src/knowledge/scales.ts";
import { cohenKappa, intraclassCorrelations } from "../../src/statistics/index.ts";

const scaleOf = (id: string) => scales.get(id);
const known = [...scales.keys()];

/** Readings of two readers from a table of pigs by grade: row = grade of A, column = of B. */
function fromTable(table: readonly (readonly number[])[], scale: string): Reading[] {
  let pig = 0;
  return table.flatMap((row, a) =>
    row.flatMap((pigs, b) =>
      Array.from({ length: pigs }, () => {
        pig += 1;
        const at = `line ${pig}`;
        return [
          { pig: String(pig), reader: "A", scale, value: a, at },
          { pig: String(pig), reader: "B", scale, value: b, at },
        ];
      }).flat(),
    ),
  );
}

describe("two readers", () => {
  it("gives the published kappa of a table (SAS output: .4842; linear .4701), without limits of 19 pigs", () => {
    const { scales: found } = agree(
      fromTable(
        [
          [0, 4, 1],
          [0, 8, 0],
          [0, 1, 5],
        ],
        "maff-1978",
      ),
      scaleOf,
    );
    const [pair] = found[0]?.pairs ?? [];
    expect(pair).toMatchObject({ first: "A", second: "B", pigs: 19 });
    expect(pair?.grades?.unweighted.kappa?.toFixed(4)).toBe("0.4842");
    for (const found of [pair?.grades?.unweighted, pair?.grades?.quadratic, pair?.icc?.agreement])
      expect(found).toMatchObject({ lower: null, upper: null, reason: "fewer than 20 pigs" });
    // Linear and quadratic weights do not change with grades that nobody gave: 0 to 2 here on a scale to 5.
    expect(pair?.grades?.linear?.kappa?.toFixed(4)).toBe("0.4701");
    expect(pair?.grades?.quadratic?.kappa?.toFixed(4)).toBe("0.4502");
    expect(pair?.grades?.table.map((row) => row.slice(0, 3)).slice(0, 3)).toEqual([
      [0, 4, 1],
      [0, 8, 0],
      [0, 1, 5],
    ]);
    expect(pair?.same).toMatchObject({ proportion: 13 / 19 });
    // Six grades on the scale: (6 x 13/19 - 1) / 5.
    expect(pair?.grades?.pabak.value).toBeCloseTo((6 * (13 / 19) - 1) / 5, 12);
    // B gives more in 5 pigs and less in 1: 2 (1 + 6) / 64.
    expect(pair?.difference).toMatchObject({ second_higher: 5, first_higher: 1, equal: 13 });
    expect(pair?.difference?.p).toBeCloseTo(14 / 64, 14);
    expect(pair?.difference?.mean.mean).toBeCloseTo(5 / 19, 14);
  });

  it("gives the published ICC of four readers, in pairs and together (Shrout & Fleiss 1979)", () => {
    const ratings = [
      [9, 2, 5, 8],
      [6, 1, 3, 2],
      [8, 4, 6, 8],
      [7, 1, 2, 6],
      [10, 5, 6, 9],
      [6, 2, 4, 7],
    ];
    const readings = ratings.flatMap((row, pig) =>
      row.map((value, reader) => ({
        pig: `pig ${pig}`,
        reader: `reader ${reader}`,
        scale: "madec-kobisch-1982",
        value,
        at: "",
      })),
    );
    const [found] = agree(readings, scaleOf).scales;
    expect(found?.pairs.length).toBe(6);
    expect(found?.together?.agreement.icc?.toFixed(2)).toBe("0.29");
    expect(found?.together?.consistency.icc?.toFixed(2)).toBe("0.71");
    expect(found?.together?.agreement).toMatchObject({ lower: null, reason: "fewer than 20 pigs" });
    // 0 to 28 points are no grades.
    expect(found?.grades).toBeNull();
    expect(found?.pairs[0]?.grades).toBeNull();
    expect(found?.pairs[0]?.icc).not.toBeNull();
  });

  it("compares pigs that both read and no others; readers together only on pigs that all read", () => {
    const reading = (pig: string, reader: string, value: number) => ({
      pig,
      reader,
      scale: "maff-1978",
      value,
      at: "",
    });
    const [found] = agree(
      [
        reading("1", "A", 2),
        reading("2", "A", 3),
        reading("3", "A", 1),
        reading("2", "B", 3),
        reading("3", "B", 2),
        reading("4", "B", 5),
        reading("9", "C", 0),
      ],
      scaleOf,
    ).scales;
    expect(found?.pairs.map(({ first, second, pigs }) => [first, second, pigs])).toEqual([["A", "B", 2]]);
    expect(found?.together).toBeNull();
  });

  it("shows published agreement on the same organ, and only for organs that exist", () => {
    const [found] = agree(
      fromTable(
        [
          [3, 1],
          [0, 4],
        ],
        "maff-1978",
      ),
      scaleOf,
    ).scales;
    expect(found?.published.map(({ of, lowest, highest }) => [of, lowest, highest])).toEqual([
      ["turbinate atrophy", 0.63, 0.68],
    ]);
    for (const { organ, lowest, highest } of publishedAgreement) {
      expect(organs.map(({ id }) => id)).toContain(organ);
      expect(lowest).toBeLessThanOrEqual(highest);
    }
  });

  const opposite = [
    [0, 2],
    [2, 0],
  ];
  it("shows no ICC below -1, and says that readers who never agree never agree", () => {
    const report = agree(fromTable(opposite, "maff-1978"), scaleOf);
    const [pair] = report.scales[0]?.pairs ?? [];
    expect(pair?.icc?.agreement).toEqual({
      icc: null,
      lower: null,
      upper: null,
      reason: "below -1: the readers agree less than by chance",
    });
    expect(pair?.icc?.consistency.icc).toBe(-1);
    expect(pair?.grades?.unweighted.reason).toBe("the readers never agree");
    const text = agreeText(report, makeStyle(false));
    expect(text).not.toContain("-2.00");
    expect(text).toContain("the readers never agree");
    expect(agreeJson(report)).not.toContain("-2");
  });

  it("says why the sign test and the interval of the mean disagree, and nothing where they agree", () => {
    const noteOf = (table: readonly (readonly number[])[]) =>
      agree(fromTable(table, "maff-1978"), scaleOf).scales[0]?.pairs[0]?.difference?.note;
    // 5 pigs higher of 10: t interval 0.12 to 0.88, sign test 2 / 32.
    expect(noteOf([[5, 5]])).toContain("The interval leaves out 0 and the test shows nothing");
    // 6 higher by 1 and none lower (p 2 / 64), and one lower by 5 (p 16 / 128): both say nothing.
    expect(noteOf([[0, 6], [], [], [], [], [1]])).toBeNull();
    // 12 higher by 1, one lower by 5: p 28 / 8192, interval -0.46 to 1.54.
    expect(noteOf([[0, 12], [], [], [], [], [1]])).toContain(
      "The test shows who is higher and the interval holds 0",
    );
    expect(noteOf(opposite)).toBeNull();
  });

  const one = (value: number, reader = "A", pig = "1", scale = "maff-1978"): Reading => ({
    pig,
    reader,
    scale,
    value,
    at: "x.csv:2",
  });
  it.each([
    [[], /no pig was read by two readers on the same scale/],
    [[one(1), one(2, "B", "2")], /no pig was read by two readers/],
    [[one(1), one(2, "B", "1", "dottori-2007")], /no pig was read by two readers/],
    [
      [one(1), one(2)],
      'x.csv:2: A reads pig 1 twice on maff-1978; call the second time something else, such as "A again"',
    ],
    [[one(6)], "x.csv:2: maff-1978 goes from 0 to 5, not 6"],
  ])("%j is refused", (readings, message) => {
    expect(() => agree(readings, scaleOf)).toThrow(message);
  });
});

describe("table", () => {
  it("reads quotes, blank cells, semicolons, byte order mark and every line end", () => {
    expect(readTable("x.csv", '\ufeffa,"b ""c"""\r\n\r\n1, 2\r"x\ny",3')).toEqual([
      { cells: ["a", 'b "c"'], line: 1 },
      { cells: ["1", "2"], line: 3 },
      { cells: ["x\ny", "3"], line: 4 },
    ]);
    expect(readTable("x.csv", "pig;reader\n1;A")).toEqual([
      { cells: ["pig", "reader"], line: 1 },
      { cells: ["1", "A"], line: 2 },
    ]);
    expect(() => readTable("x.csv", 'a\n"b')).toThrow(
      'x.csv:2: the table ends within a cell that begins with "; close it',
    );
  });

  it("takes columns in any order, and no reading from a blank cell", () => {
    const text = "MAFF-1978,Reader,pig,dottori-2007\n3,A,0217,\n,B,0217,2\n";
    expect(tableReadings("x.csv", text, known)).toEqual([
      { pig: "0217", reader: "A", scale: "maff-1978", value: 3, at: "x.csv:2" },
      { pig: "0217", reader: "B", scale: "dottori-2007", value: 2, at: "x.csv:3" },
    ]);
  });

  it.each([
    ["", /^x.csv:1: the first line must name the columns pig, reader/],
    ["pig,maff-1978\n1,2", /the first line must name the columns/],
    ["pig,reader\n1,A", /x.csv:1: there is no column with the name of a scale/],
    ["pig,reader,maff-1987\n1,A,2", /x.csv:1: there is no scale "maff-1987". Did you mean maff-1978\?/],
    ["pig,reader,maff-1978,maff-1978\n1,A,2,2", 'x.csv:1: there are two columns "maff-1978"'],
    ["pig,reader,maff-1978\n1,A,2,3", "x.csv:2: 4 cells under 3 columns"],
    ["pig,reader,maff-1978\n\n,A,2", "x.csv:3: the pig is missing"],
    ["pig,reader,maff-1978\n1,,2", "x.csv:2: the reader is missing"],
    ["pig,reader,maff-1978\n1,A,two", /x.csv:2: maff-1978: "two" is no number; leave the cell blank/],
    ['pig,reader,maff-1978\n1,A,"2,5"', /"2,5" is no number; write 2.5/],
  ])("%j is refused", (text, message) => {
    expect(() => tableReadings("x.csv", text, known)).toThrow(message);
  });
});

const folders: string[] = [];
afterEach(() => {
  for (const folder of folders.splice(0)) rmSync(folder, { recursive: true });
});

/** A folder with these files. */
function folderWith(files: Readonly<Record<string, string>>): string {
  const folder = mkdtempSync(join(tmpdir(), "carcase-agree-"));
  folders.push(folder);
  for (const [name, text] of Object.entries(files)) {
    mkdirSync(dirname(join(folder, name)), { recursive: true });
    writeFileSync(join(folder, name), text);
  }
  return folder;
}

const caseFile = (id: string, grade: number, readings: string) =>
  `format: 1\ncase: ${id}\nexaminer: A. Marlow\nrespiratory:\n  turbinates: {section: premolar-1, grades: {maff-1978: ${grade}}}\nreadings:\n${readings}\n`;

describe("cases", () => {
  it("hold further readings beside the examiner's own record", () => {
    const folder = folderWith({
      "one.yaml": caseFile("alder-1", 3, "  - {reader: B. Wren, grades: {maff-1978: 2}}"),
      "two.yaml": caseFile(
        "alder-2",
        1,
        "  - {reader: B. Wren, grades: {maff-1978: 1}}\n  - {reader: C. Teal, grades: {maff-1978: 0, dottori-2007: 2}}",
      ),
      "three.yaml": "format: 1\ncase: alder-3\nexaminer: A. Marlow\n",
    });
    const archive = readCases([folder]);
    expect(archive.cases.flatMap(({ faults }) => faults)).toEqual([]);
    const readings = caseReadings(archive);
    expect(readings.map(({ pig, reader, scale, value }) => [pig, reader, scale, value])).toEqual([
      ["alder-1", "A. Marlow", "maff-1978", 3],
      ["alder-1", "B. Wren", "maff-1978", 2],
      ["alder-2", "A. Marlow", "maff-1978", 1],
      ["alder-2", "B. Wren", "maff-1978", 1],
      ["alder-2", "C. Teal", "maff-1978", 0],
      ["alder-2", "C. Teal", "dottori-2007", 2],
    ]);
    const [found] = agree(readings, scaleOf).scales;
    expect(found?.pairs.map(({ first, second, pigs }) => [first, second, pigs])).toEqual([
      ["A. Marlow", "B. Wren", 2],
      ["A. Marlow", "C. Teal", 1],
      ["B. Wren", "C. Teal", 1],
    ]);
  });

  it("are refused for a mistyped scale, with the line", () => {
    const folder = folderWith({
      "one.yaml": caseFile("alder-1", 3, "  - {reader: B. Wren, grades: {maff-1987: 2}}"),
    });
    expect(() => caseReadings(readCases([folder]))).toThrow(
      /one\.yaml:7: there is no scale "maff-1987"\. Did you mean maff-1978\?/,
    );
  });

  it("name a format fault of a reading", () => {
    const folder = folderWith({ "one.yaml": caseFile("alder-1", 3, "  - {grades: {maff-1978: -2}}") });
    const messages = readCases([folder]).cases.flatMap(({ faults }) => faults.map(({ message }) => message));
    expect(messages.some((message) => message.includes("reader"))).toBe(true);
    expect(messages.length).toBe(2);
  });
});

describe("what is printed", () => {
  const hostile = "B\u001b[31m\u202e=1+1";
  const table = [
    [6, 2, 0],
    [1, 5, 2],
    [0, 0, 4],
  ];
  const report = agree(
    fromTable(table, "maff-1978").map((one) => (one.reader === "B" ? { ...one, reader: hostile } : one)),
    scaleOf,
  );

  it("is safe whatever a reader is called", () => {
    for (const text of [agreeText(report, makeStyle(false)), agreeJson(report), agreeCsv(report)]) {
      expect(text).not.toMatch(/[\u001b\u202e]/);
    }
    const [pair] = JSON.parse(agreeJson(report)).scales[0].pairs;
    expect(pair.second).toBe(hostile);
  });

  it("says the same in text, JSON and CSV", () => {
    const [pair] = report.scales[0]?.pairs ?? [];
    const kappa = pair?.grades?.unweighted.kappa ?? Number.NaN;
    expect(agreeText(report, makeStyle(false))).toContain(kappa.toFixed(2));
    expect(JSON.parse(agreeJson(report)).scales[0].pairs[0].kappa.unweighted.value).toBe(kappa);
    expect(agreeCsv(report)).toContain(`kappa_unweighted,${kappa},`);
    expect(agreeCsv(report).split("\r\n")[0]).toBe("scale,first,second,pigs,measure,value,lower,upper,level");
  });

  it("stays within 80 columns and names who is higher only when it is shown", () => {
    const text = agreeText(report, makeStyle(false));
    expect(Math.max(...text.split("\n").map((line) => line.length))).toBeLessThanOrEqual(80);
    expect(text).toContain("Neither is shown to be higher");
    const leaning = agree(
      fromTable(
        [
          [4, 9, 0],
          [0, 4, 6],
          [0, 0, 3],
        ],
        "maff-1978",
      ),
      scaleOf,
    );
    expect(agreeText(leaning, makeStyle(false))).toMatch(/B is higher: B gives more in 15, less in 0/);
  });

  it("warns below 30 pigs, names who says so, and writes one point in the singular", () => {
    const grades = (pigs: number) => [
      [0, pigs],
      [0, 0],
    ];
    const few = agree(fromTable(grades(29), "maff-1978"), scaleOf);
    const text = agreeText(few, makeStyle(false));
    expect(text).toContain("less A: 1 point.");
    expect(text.replaceAll(/\s+/g, " ")).toContain(
      "Few pigs: from 29 pigs; 30 or more are advised: Koo & Li 2016",
    );
    expect(JSON.parse(agreeJson(few)).scales[0].pairs[0].caution).toContain("from 29 pigs; 30 or more");
    const enough = agree(fromTable(grades(30), "maff-1978"), scaleOf);
    expect(agreeText(enough, makeStyle(false))).not.toContain("Few pigs");
    expect(JSON.parse(agreeJson(enough)).scales[0].pairs[0].caution).toBeNull();
    expect(agreeText(report, makeStyle(false))).toMatch(/less A: -?\d+(\.\d+)? points \(/);
  });

  it("gives grades that are names kappa and the table, and nothing that needs an order", () => {
    const named = agree(
      [
        ["1", 0, 0],
        ["2", 2, 4],
        ["3", 4, 4],
      ].flatMap(([pig, a, b]) =>
        ["A", "B"].map((reader, second) => ({
          pig: String(pig),
          reader,
          scale: "carcass-abscess",
          value: Number(second === 0 ? a : b),
          at: "",
        })),
      ),
      scaleOf,
    );
    const [pair] = named.scales[0]?.pairs ?? [];
    // Agreement 2/3; by chance (1 x 1 + 1 x 0 + 1 x 2) / 9: kappa (2/3 - 1/3) / (1 - 1/3).
    expect(pair?.grades?.unweighted.kappa).toBeCloseTo(0.5, 12);
    expect(pair).toMatchObject({ icc: null, difference: null, grades: { linear: null, quadratic: null } });
    const text = agreeText(named, makeStyle(false));
    expect(text).toContain("names without an order");
    expect(text).not.toMatch(/weights {2}|ICC\(|higher:/);
    expect(agreeCsv(named)).not.toMatch(/linear|icc|mean_difference/);
    expect(JSON.parse(agreeJson(named)).scales[0].pairs[0].difference).toBeNull();
  });

  it("says why a value or an interval is missing", () => {
    const same = agree(fromTable([[12]], "maff-1978"), scaleOf);
    const text = agreeText(same, makeStyle(false));
    expect(text).toContain("both readers used one category only");
    expect(text).toContain("there is no variance");
  });
});

describe("limits of kappa and ICC", () => {
  const grades = [0, 1, 2, 3, 4, 5];
  /** 18 other pigs, and as many sound ones as are asked for. */
  const pairsOf = (sound: number): Two[] => {
    const others: readonly Two[] = [
      [1, 2],
      [2, 2],
      [3, 3],
      [4, 3],
      [5, 5],
      [1, 1],
    ];
    return [
      ...Array.from({ length: sound }, (): Two => [0, 0]),
      ...Array.from({ length: 18 }, (_, pig): Two => others[pig % others.length] ?? [0, 0]),
    ];
  };
  const pairOf = (sound: number) =>
    comparePair(["a", "b"], pairsOf(sound), grades, { level: 0.95, nominal: false });
  const together = (pairs: readonly Two[]) =>
    agree(
      pairs.flatMap(([a, b], pig) =>
        [a, b, b].map((value, reader) => ({
          pig: `${pig}`,
          reader: `reader ${reader}`,
          scale: "maff-1978",
          value,
          at: "",
        })),
      ),
      scaleOf,
    ).scales[0]?.together;

  it("are those of the jackknife, for two readers and for all together, from 20 pigs on", () => {
    const pairs = pairsOf(12);
    const { icc, grades: kappas } = pairOf(12);
    const correlations = intraclassCorrelations(pairs, { limits: "jackknife" });
    expect(icc).toEqual({ agreement: correlations.agreement, consistency: correlations.consistency });
    const table = grades.map((row) =>
      grades.map((column) => pairs.filter(([a, b]) => a === row && b === column).length),
    );
    for (const weights of ["unweighted", "linear", "quadratic"] as const)
      expect(kappas?.[weights]).toEqual(cohenKappa(table, { weights, limits: "jackknife" }));
    const three = intraclassCorrelations(
      pairs.map(([a, b]) => [a, b, b]),
      { limits: "jackknife" },
    );
    expect(together(pairs)).toEqual(three);
    expect(three.agreement.lower).not.toBeNull();
    expect(pairOf(2).grades?.unweighted.reason).toBeNull();
    expect(pairOf(1).grades?.unweighted.reason).toBe("fewer than 20 pigs");
    expect(together(pairsOf(1))?.consistency.reason).toBe("fewer than 20 pigs");
  });

  it("are not given of quadratic kappa and ICC where more than 40 % of the readings are one value", () => {
    const reason = "over 40 % of readings are one value";
    const { icc, grades: kappas } = pairOf(13);
    const all = together(pairsOf(13));
    for (const found of [
      icc?.agreement,
      icc?.consistency,
      kappas?.quadratic,
      all?.agreement,
      all?.consistency,
    ])
      expect(found).toMatchObject({ lower: null, upper: null, reason });
    expect(icc?.agreement.icc).toBeGreaterThan(0.9);
    expect(kappas?.linear?.reason).toBeNull();
    // 12 of 30 are 40 %.
    expect(pairOf(12).icc?.agreement.reason).toBeNull();
  });
});
