/** Tables as spreadsheets write them, with cases out of them; all tables here are invented. */
import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { checkDocument, keyedDocument } from "../../src/cases/files/read-file.ts";
import { valueAt } from "../../src/cases/index.ts";
import { type CaseColumn, caseColumn, caseColumns } from "../../src/cases/settings/case-columns.ts";
import { csv } from "../../src/formats/page/csv.ts";
import { organs } from "../../src/knowledge/index.ts";
import { emptyTable, proposal, readTally, TableFault, type Tally } from "../../src/tally/index.ts";
import { put, temporaryFolder } from "../cases/temporary.ts";
import { every } from "../every.ts";
import { runs } from "../random.ts";

const top = temporaryFolder();
const visit = join(top, "alder/2026-03-14");
mkdirSync(visit, { recursive: true });
writeFileSync(join(top, "alder/farm.yaml"), "format: 1\nfarm: alder\n");

interface More {
  readonly folder?: string;
  readonly there?: readonly number[];
  readonly date?: string;
}

function read(table: string | Buffer, { folder = visit, there = [], ...more }: More = {}) {
  return readTally({
    file: "t.csv",
    bytes: Buffer.from(table),
    folder,
    there: new Map(there.map((number) => [number, `${folder}/pig-0${number}.yaml`])),
    folderFor: () => folder,
    ...more,
  });
}

function tally(table: string | Buffer, more?: More): Tally {
  const result = read(table, more);
  if ("unknown" in result) throw new Error(result.faults.map(({ message }) => message).join("; "));
  return result;
}

/** The records of a table, as they are read from their files. */
const records = ({ cases }: Tally): Record<string, unknown>[] =>
  cases.map(({ file, text }) => {
    const document = keyedDocument(file, { ok: true, text });
    if (!document.ok) throw new Error(text);
    const { placed, record } = checkDocument("case", file, document.result);
    expect(placed.map(({ message }) => message)).toEqual([]);
    return record;
  });

/** `4:7 what is wrong` of each fault. */
function faults(table: string | Buffer, more?: More): string[] {
  try {
    const result = read(table, more);
    if ("unknown" in result)
      return result.faults.map(({ line, column, message }) => `${line}:${column} ${message}`);
  } catch (error) {
    if (error instanceof TableFault)
      return error.faults.map(({ line, column, message }) => `${line}:${column} ${message}`);
    if (error instanceof RangeError) return [error.message];
    throw error;
  }
  return [];
}

const cells = [
  ["pig", "tag", "pen", "sex", "weight (kg)", "note"],
  ["1", "0217", "Büro", "female", "17.5", 'says "no", coughs'],
  ["2", "0218", "7", "castrate", "18", ""],
];
const quoted = (text: string): string => (/[",;\t|]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text);
const dressed = (separator: string, end = "\n", decimal = "."): string =>
  cells
    .map((row) => row.map((cell) => quoted(cell.replace("17.5", `17${decimal}5`))).join(separator) + end)
    .join("");
const latin = (text: string): Buffer => Buffer.from(text, "latin1");
const swapped = (text: string): Buffer => Buffer.from(text, "utf16le").swap16();

const dresses: readonly (readonly [table: string | Buffer, said: readonly string[]])[] = [
  [dressed(","), ["commas between the cells, UTF-8"]],
  [dressed(",", "\r\n"), ["commas between the cells, UTF-8"]],
  [dressed(",", "\r"), ["commas between the cells, UTF-8"]],
  [`\ufeff${dressed(";", "\r\n", ",")}`, ["semicolons between the cells, UTF-8", "decimal commas"]],
  [dressed(",", "\n", ","), ["commas between the cells, UTF-8", "decimal commas"]],
  [dressed("\t"), ["tabs between the cells, UTF-8"]],
  [dressed("|"), ["bars between the cells, UTF-8"]],
  [`sep=;\r\n${dressed(";", "\r\n")}`, ["semicolons between the cells, UTF-8"]],
  [Buffer.from(`\ufeff${dressed("\t")}`, "utf16le"), ["tabs between the cells, UTF-16"]],
  [Buffer.from(dressed("\t"), "utf16le"), ["tabs between the cells, UTF-16"]],
  [swapped(`\ufeff${dressed(";")}`), ["semicolons between the cells, UTF-16"]],
  [swapped(dressed(";")), ["semicolons between the cells, UTF-16"]],
  [latin(dressed(";")), ['semicolons between the cells, windows-1252, so that "Büro" stands there']],
  [
    `Tally of the line,,,,,\n,,,,,\n${dressed(",")}`,
    ["commas between the cells, UTF-8", "1 line of titles", "head in line 3"],
  ],
  [
    `${dressed(",")},,,,,\n${cells[0]?.join(",")}\n3,,,,,\n`,
    ["commas between the cells, UTF-8", "the head again in 1 line", "1 line left blank"],
  ],
  [dressed(",").replace("0217", '"=""0217"""'), ["commas between the cells, UTF-8"]],
]; // prettier-ignore

describe("a table, as a spreadsheet may write it", () => {
  every(
    "says the same in every dress, and how it was read",
    dresses,
    ([table, said]) => {
      const result = tally(table);
      expect(records(result)).toEqual([
        {
          format: 1,
          case: "alder-2026-03-14-01",
          pig: { tag: "0217", pen: "Büro", sex: "female", weight: "17.5 kg" },
          note: 'says "no", coughs',
        },
        {
          format: 1,
          case: "alder-2026-03-14-02",
          pig: { tag: "0218", pen: "7", sex: "castrate", weight: "18 kg" },
        },
      ]);
      expect(result.said).toEqual(said);
    },
    ([table]) => JSON.stringify(table.toString().slice(0, 60)),
  );

  it("joins a head of two lines with merged cells", () => {
    const table =
      "pig,turbinates left,,turbinates right,,septum\n,dorsal,ventral,dorsal,ventral,\n1,0,1,2,3,slight\n";
    const result = tally(table);
    expect(result.said).toContain("head in the lines 1 and 2");
    expect(records(result)[0]?.respiratory).toEqual({
      turbinates: { left: { dorsal: 0, ventral: 1 }, right: { dorsal: 2, ventral: 3 }, septum: "slight" },
    });
  });

  it("reads the letters of windows-1252 that lie between", () => {
    const [first] = records(tally(latin("pig;note\n1;K\x80\x96\x84\n")));
    expect(first?.note).toBe("K€–„");
  });

  it("puts what all pigs share into a new visit, and what is left into the cases", () => {
    const result = tally(
      "tag,group,age,opened at\n1,nursery-2,58 d,14.03.2026\n2,nursery-2,58 d,14.03.2026 9:10\n",
    );
    expect(result.visit?.text).toBe(
      "format: 1\nvisit: alder-2026-03-14\ndate: 2026-03-14\ndefaults:\n  pig: {group: nursery-2, age: 58 d}\ncases: [alder-2026-03-14-01, alder-2026-03-14-02]\n",
    );
    expect(result.cases.map(({ text }) => text)).toEqual([
      'format: 1\ncase: alder-2026-03-14-01\npig: {tag: "1"}\nopened: {at: 2026-03-14}\n',
      'format: 1\ncase: alder-2026-03-14-02\npig: {tag: "2"}\nopened: {at: 2026-03-14T09:10}\n',
    ]);
  });

  it("leaves the visit that is there alone, and out of the cases what it says", () => {
    const folder = join(top, "birch");
    put(folder, {
      "visit.yaml":
        "format: 1\nvisit: birch-1\ndate: 2026-03-14\ndefaults: {pig: {group: nursery-2, age: 58 d}}\ncases: [birch-1-01]\n",
    });
    const result = tally("pig,tag,group,age,class\n2,1,nursery-2,58 d,\n3,2,nursery-1,58 d,suckling\n", {
      folder,
    });
    expect([result.visit, result.unnamed?.endsWith("visit.yaml")]).toEqual([undefined, true]);
    expect(result.cases.map(({ text }) => text)).toEqual([
      'format: 1\ncase: birch-1-02\npig: {tag: "1"}\n',
      // A pig of another class would not inherit the age.
      'format: 1\ncase: birch-1-03\npig: {tag: "2", group: nursery-1, age: 58 d, class: suckling}\n',
    ]);
  });
});

const wrong: readonly (readonly [table: string | Buffer, said: readonly string[], more?: More])[] = [
  [
    "pig,sex\n1,femal\n2,male\n",
    ['2:3 cell B2: sex: "femal" is not one of female, male, castrate. Did you mean female?'],
  ],
  [
    "pig,lungs consolidation accessory\n1,5\n2,120\n",
    ["3:3 cell B3: lungs consolidation accessory: 120 is out of range; write 0 to 100."],
  ],
  [
    "pig,lungs,lungs consolidation accessory\n1,normal,120\n",
    ["2:10 cell C2: lungs consolidation accessory: 120 is out of range; write 0 to 100."],
  ],
  [
    "pig,weight\n1,17.5\n",
    [
      '2:3 cell B2: weight: "17.5" has no unit. Write a weight with its unit, g or kg, such as 17.5 kg. Or write the unit into the head: weight (kg).',
    ],
  ],
  ['pig;keratin;ulcer\n1;"2\n\n";7\n2;3;170\n', ["5:5 cell C3: ulcer: 170 is out of range; write 0 to 100."]],
  [
    "pig,lungs,septum,turbinates\n1,not examined: lost,,\n2,,slight,not examined: crushed\n",
    ['3:4 cell C3: septum: this was not examined, as column "turbinates" says; empty one of the two cells'],
  ],
  ["pig,tag\n1,12\n2,12\n", ["3:3 cell B3: the tag 12 stands in line 2 already; correct one of them"]],
  [
    "pig,tag\n1,12\n1,13\n",
    ["3:1 cell A3: the case alder-2026-03-14-01 stands in line 2 already; correct one of them"],
  ],
  [
    "pig,case\n1,a\n1,b\n",
    [`3:1 cell A3: the pig of ${visit}/pig-01.yaml stands in line 2 already; correct one of them`],
  ],
  [
    "pig,tag\nA7,12\n",
    [
      '2:1 cell A2: pig: "A7" is not the number of a pig in its visit, 1, 2, 3; what stands on the ear goes under tag',
    ],
  ],
  [
    "pig,tag\n1,12\n2,13\n",
    [
      `3:1 cell A3: ${visit}/pig-02.yaml is there already, and no case is overwritten; number the pigs on from the last, in a column "pig"`,
    ],
    { there: [2] },
  ],
  [
    "tag,sex,septum\n12,female,slight\nMean,,1\n",
    ['3:1 cell A3: "Mean" looks like a line of totals; take it out of the table'],
  ],
  ["tag,Tag\n1,2\n", ['1:5 cell B1: "Tag" and "tag" are both pig.tag; take one of the columns out']],
  [
    "tag,sex,\n1,,2\n",
    ["2:4 cell C2: column C has no head; write above it what it holds, or empty the column"],
  ],
  ["tag,Ohrmarke\n1,2\n", ['1:5 cell B1: nobody has said what "Ohrmarke" is']],
  ["tag,sex\n", ["1:1 cell A1: there is no row below the head; write one line a pig"]],
  [
    "pig,sex\n1,\n2,\n",
    ["1:1 cell A1: no row below the head says anything of a pig; nothing is to be imported"],
  ],
  [
    "pig;keratin;ulcer\n1;17,5;1\n2;17.5;1\n",
    [
      '2:3 cell B2: "17,5" has a comma and "17.5" in row 3 a point; write all numbers of the column in one way',
    ],
  ],
  [
    "pig;milk spots\n1;1,000\n",
    [
      '2:3 cell B2: "1,000" may be a thousand or a decimal; write it without the comma, or with other decimals',
    ],
  ],
  [
    "pig,opened at\n1,03/04/2026\n",
    [
      '2:3 cell B2: "03/04/2026" can be read day first or month first; write the year first (2026-03-14), or write dates: day-first for this column in carcase.yaml',
    ],
  ],
  [
    "pig,opened at\n1,46095\n2,14.3.26\n",
    [
      '2:3 cell B2: opened at: "46095" is no date that can be told; write 2026-03-14, with a time 2026-03-14T09:10',
      '3:3 cell B3: opened at: "14.3.26" is no date that can be told; write 2026-03-14, with a time 2026-03-14T09:10',
    ],
  ],
  ["pig,tag\n1,=A2\n", ["2:3 cell B2: tag: this is a formula; save the table with the values"]],
  [
    "pig,keratin\n1,#DIV/0!\n2,#NV\n",
    [
      "2:3 cell B2: keratin: #DIV/0! is an error of the spreadsheet; write the value, or nothing",
      "3:3 cell B3: keratin: #NV is an error of the spreadsheet; write the value, or nothing",
    ],
  ],
  ['pig,tag\n1,"12 ""\n2,13\n', ['2:1 a cell that begins with " is not closed; close it']],
  [
    'pig,tag\n1,"12"3\n',
    ['2:1 a " stands in the midst of a cell; write "" for it and put the cell in quotes'],
  ],
  ["pig,tag\n1,ä\u001bb\n", ["2:3 cell B2: this cell holds a control character (U+001B); take it out"]],
  ["", ["0:0 the table is empty"]],
  ["PK\u0003\u0004", ["0:0 it is a workbook and no text; save the sheet as CSV"]],
  [
    latin("pig,tag\n1,\x81\n"),
    ["0:0 its letters are neither UTF-8 nor windows-1252; save the sheet as CSV in UTF-8"],
  ],
  [Buffer.from([1, 0, 0, 0, 2]), ["0:0 it is no text; save the sheet as CSV"]],
  ["a,".repeat(9999), ["1:1001 cell SG1: the row has 10000 columns; 500 is the limit"]],
  [`a${",".repeat(300)}\n`.repeat(700), ["0:0 it has more than 200000 cells; a tally has some thousand"]],
  [
    "pig,tag\n1,2\n",
    [
      "there is no visit.yaml in nowhere/x, nor a farm.yaml above it; name the visit, such as --visit alder-2026-03-14",
    ],
    { folder: "nowhere/x", date: "2026-03-14" },
  ],
  [
    "pig,tag\n1,2\n",
    [
      'there is no visit.yaml in nowhere/x, and no one day under "opened at"; say it, such as --date 2026-03-14',
    ],
    { folder: "nowhere/x" },
  ],
]; // prettier-ignore

describe("a table that does not fit", () => {
  every(
    "is told by line and column, with what to write",
    wrong,
    ([table, said, more]) => expect(faults(table, more)).toEqual(said),
    ([, [said = ""]]) => said,
  );

  it("lists no more than twenty faults", () => {
    const many = faults(`pig,sex\n${Array.from({ length: 50 }, (_, at) => `${at + 1},x\n`).join("")}`);
    expect([many.length, many[19]?.endsWith("(and 30 more like these)")]).toEqual([20, true]);
  });
});

describe("the columns of another table", () => {
  const heads = "Ear mark;W;Sex;Cut on;Seen by;Snout L d";
  const rows = "0217;17,5;F;03/04/2026;A. N. Other;2";

  it("are proposed, as far as they come near", () => {
    const result = read(`${heads}\n${rows}\n`);
    if (!("unknown" in result)) throw new Error("every column is known");
    expect(proposal(result.unknown)).toEqual([
      { head: "Ear mark", to: undefined, such: ["0217"] },
      { head: "W", to: undefined, such: ["17,5"] },
      { head: "Cut on", to: undefined, such: ["03/04/2026"] },
      { head: "Seen by", to: undefined, such: ["A. N. Other"] },
      { head: "Snout L d", to: undefined, such: ["2"] },
    ]);
    const near = read("Lung % L cran,Weigth,Pleurisy right,Septum of nose\n1,2,3,4\n");
    if (!("unknown" in near)) throw new Error("every column is known");
    expect(proposal(near.unknown).map(({ to }) => to)).toEqual([
      "respiratory.lungs.consolidation.left_cranial",
      "pig.weight",
      undefined,
    ]);
  });

  every(
    "are proposed by their German and Spanish names, those that notes and sheets know",
    [
      ["Ohrmarke", "pig.tag"],
      ["Ohrmarken-Nr.", "pig.tag"],
      ["Geschlecht", "pig.sex"],
      ["Gewicht (kg)", "pig.weight"],
      ["Alter", "pig.age"],
      ["Lunge links Spitze", "respiratory.lungs.consolidation.left_cranial"],
      ["Lunge re. Zwerchfelllappen %", "respiratory.lungs.consolidation.right_caudal"],
      ["Anhangslappen", "respiratory.lungs.consolidation.accessory"],
      ["Nasenmuschel links dorsal", "respiratory.turbinates.left.dorsal"],
      ["Scheidewand", "respiratory.turbinates.septum"],
      ["Brustfell links", "respiratory.pleura.pleurisy.left"],
      ["Peso", "pig.weight"],
      ["Sexo", "pig.sex"],
      ["Pulmón izq. craneal", "respiratory.lungs.consolidation.left_cranial"],
      ["Cornete dcho. ventral", "respiratory.turbinates.right.ventral"],
      ["Pleura derecha", "respiratory.pleura.pleurisy.right"],
      ["Bemerkung", undefined],
    ] as const,
    ([head, to]) => {
      const result = read(`${head},Zz\n1,2\n`);
      if (!("unknown" in result)) throw new Error("the column is known");
      expect(proposal(result.unknown)[0]?.to).toBe(to);
    },
    ([head]) => head,
  );

  it("are read as the settings say", () => {
    const folder = join(top, "mapped");
    put(folder, {
      "farm.yaml": "format: 1\nfarm: mapped\n",
      "carcase.yaml":
        'format: 1\nimport:\n  columns:\n    Ear mark: pig.tag\n    W: {to: pig.weight, unit: kg}\n    Sex: {to: pig.sex, words: {F: female}}\n    Cut on: {to: opened at, dates: day-first}\n    seen  by: skip\n    "Snout L d": turbinates left dorsal\n',
    });
    const result = tally(`${heads}\n${rows}\n`, { folder });
    expect(result.said).toEqual([
      "semicolons between the cells, UTF-8",
      "decimal commas",
      "dates day first",
      "1 column skipped",
    ]);
    expect(records(result)).toEqual([
      {
        format: 1,
        case: "mapped-2026-04-03-01",
        pig: { tag: "0217", sex: "female", weight: "17.5 kg" },
        opened: { at: "2026-04-03" },
        respiratory: { turbinates: { left: { dorsal: 2 } } },
      },
    ]);
  });
});

/** Words that fit a column, as they stand in a cell. */
function sound({ id, path, kind, unit }: CaseColumn): fc.Arbitrary<string> {
  const organ = organs.find((one) => id.startsWith(`${one.id}.`));
  const observation = organ?.definition.observations?.[String(path[2])];
  const some = (words: readonly string[]): fc.Arbitrary<string> => fc.constantFrom(...words);
  const { range: [least, most] = [0, 4], values } = observation ?? {};
  const fixed: Readonly<Record<string, readonly string[]>> = {
    "pig.condition": ["2", "3.5"],
    "pig.dam_parity": ["1", "7"],
    "pig.class": ["weaner", "adult"],
    "pig.sex": ["female", "castrate"],
    "selection.basis": ["random", "found-dead"],
    "selection.treated": ["no", "yes"],
    "selection.typical": ["no", "yes"],
    "death.manner": ["euthanised", "slaughtered"],
    "death.method": ["barbiturate", "gas"],
    "opened.state": ["fresh", "frozen"],
    case: ["case-1", "x.2"],
  };
  const words = fixed[id] ?? values;
  switch (kind) {
    case "serial":
      return some(["1"]);
    case "number":
      return words === undefined ? fc.integer({ min: least, max: most }).map(String) : some(words);
    case "quantity":
      return fc.integer({ min: 1, max: 900 }).map((number) => `${number / 10} ${unit}`);
    case "moment":
      return some(["2026-03-14", "2026-03-14T09:10"]);
    case "state":
      return some(["normal", "not examined: lost, or taken"]);
    case "list":
      return some(["sneezing", "cough", "lameness"]).map((sign) => `${sign}; fever`);
    case "choices":
      return some(values ?? []);
    default:
      return words !== undefined
        ? some(words)
        : id.startsWith("alarm_check.")
          ? some(["none", "seen"])
          : kind === "word"
            ? some(["nursery-2", "full"])
            : fc
                .string({ unit: "grapheme-ascii", minLength: 1 })
                .map((text) => text.replace(/^[\s'=+\-@]+/, "").trim() || "x");
  }
}

/** By the name of an organ its observations are asked for, where it has some. */
const isAsked = ({ id, kind, path }: CaseColumn): boolean =>
  id !== "pig" &&
  !(kind === "state" && organs.some((organ) => organ.id === path.join(".") && organ.definition.observations));

describe("the empty table", () => {
  it("comes back filled in as what was written, whichever columns it has", () => {
    const column = fc.constantFrom(...caseColumns.filter(isAsked));
    const filled = fc
      .uniqueArray(column, { minLength: 1, maxLength: 12, selector: ({ id }) => id })
      // What is said of a whole organ would contradict what is said of its parts.
      .map((columns) =>
        columns.filter(
          ({ kind, path }) =>
            kind !== "state" || !columns.some((one) => one.kind !== "state" && one.path[1] === path[1]),
        ),
      )
      .filter((columns) => columns.length > 0)
      .chain((columns) => fc.tuple(fc.constant(columns), fc.tuple(...columns.map(sound))));
    fc.assert(
      fc.property(
        filled,
        fc.constantFrom(",", ";") as fc.Arbitrary<"," | ";">,
        ([columns, values], separator) => {
          const { head } = emptyTable({ pigs: [1], columns: columns.map(({ id }) => id) });
          const wanted = head.map((name) => caseColumn(name) ?? caseColumn(name.replace(/ \(.*/, "")));
          const row = wanted.map((one) =>
            one?.id === "pig" ? "01" : (values[columns.findIndex(({ id }) => id === one?.id)] ?? null),
          );
          const [record] = records(tally(csv(head, [row], separator)));
          for (const [at, one] of columns.entries()) {
            const back = valueAt(record, one.path);
            const said = values[at] ?? "";
            const list = said.split("; ");
            expect([said, Number(said), list, { not_examined: said.slice(14) }]).toContainEqual(back);
          }
        },
      ),
      { numRuns: runs(400) },
    );
  });

  it("asks for the usual tally, for organs and for values, and not for what the visit says", () => {
    expect(
      emptyTable({
        pigs: [7, 8],
        columns: ["pleura", "milk spots", "stomach"],
        defaults: { pig: { tag: "1" } },
      }),
    ).toEqual({
      head: [
        "pig",
        "pleura pleurisy left",
        "pleura pleurisy right",
        "liver milk spots",
        "pars oesophagea keratin",
        "pars oesophagea erosion",
        "pars oesophagea ulcer",
        "stomach content milk",
      ],
      rows: [
        ["07", null, null, null, null, null, null, null],
        ["08", null, null, null, null, null, null, null],
      ],
    });
    expect(emptyTable({ pigs: [1] }).head.length).toBe(22);
    expect(() => emptyTable({ pigs: [1], columns: ["milk spot"] })).toThrow(
      'there is no column "milk spot". Did you mean milk spots?',
    );
  });

  it("has a name of its own for each column, by which import knows it", () => {
    expect(caseColumns.filter((column) => caseColumn(column.name) !== column).map(({ id }) => id)).toEqual(
      [],
    );
    expect(caseColumns.filter((column) => caseColumn(column.id) !== column).map(({ id }) => id)).toEqual([]);
  });
});
