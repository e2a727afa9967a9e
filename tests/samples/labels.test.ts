/** Labels: another library than wrote them reads their codes from what a browser prints, and nothing lies over anything else. */
import { spawnSync } from "node:child_process";
import { readFileSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { prepareZXingModule, readBarcodes } from "zxing-wasm/reader";
import { codeOf } from "../../src/formats/samples/label-code.ts";
import { drawLabel, type LabelWish, labelDocument, labelPage } from "../../src/formats/samples/labels.ts";
import { type CodeKind, type LabelSheet, labelSheets } from "../../src/knowledge/label-sheets.ts";
import { labelAt, labelSheetFault, paperSizes } from "../../src/knowledge/paper.ts";
import { containersOfCase } from "../../src/record/index.ts";
import { labelOf, onSheets } from "../../src/sending/labels.ts";
import { temporaryFolder } from "../cases/temporary.ts";
import { byTurns, isWhole, seed } from "../random.ts";
import { caseOf } from "../sheet/made.ts";
import { browserAt, printed, printedPage } from "./browser.ts";

const resolve = createRequire(import.meta.url).resolve;

/** Numbers and texts of all lengths, as samples of one pig. */
const samples = [
  ...Array.from({ length: 290 }, (_, index) => ({
    id: `${String(1 + (index % 30)).padStart(2, "0")}-${String.fromCharCode(65 + (index % 26))}${index}`,
    from: ["respiratory.lungs", "respiratory.turbinates", "lymphoid.tonsil", "blood"][index % 4],
    into: ["formalin", "transport-medium", "chilled", "edta-tube"][index % 4],
  })),
  ...Array.from({ length: 10 }, (_, index) => ({
    id: `alder-2026-03-14-0${index}_W`,
    from: "respiratory.lungs",
    into: "transport-medium",
  })),
];
const yaml = samples.map(
  ({ id, from, into }, index) =>
    `  - {id: "${id}", from: ${from}, into: ${into}, for: [culture, pcr${index % 3 === 0 ? ", virus-isolation, immunohistochemistry" : ""}], at: 2026-03-14T10:05${
      index % 2 === 0
        ? ', site: "edge of the lesion, WWWW MMMM, caudal part of the right middle lobe and sound tissue beside it"'
        : ""
    }}`,
);
const containers = containersOfCase(
  caseOf(`pig: {age: 58 d, tag: "DE 09 123 4567 & <8>"}\nsamples:\n${yaml.join("\n")}`),
);
const ids = samples.map(({ id }) => id);

const sheetNamed = (name: string): LabelSheet => {
  const sheet = labelSheets.get(name);
  if (sheet === undefined) throw new Error(name);
  return sheet;
};

function documentOf(name: string, code: CodeKind, start = 1): string {
  const sheet = sheetNamed(name);
  const wish: LabelWish = { sheet, code, edges: true };
  const drawn = containers.map((container) => {
    const label = drawLabel(labelOf(container), wish);
    if (typeof label === "string") throw new Error(`${container.id}: ${label}`);
    return label;
  });
  const pages = onSheets(drawn, { places: sheet.columns * sheet.rows, start, copies: 1 });
  return labelDocument(
    pages.map((labels) => labelPage(labels, wish, "Labels")),
    wish,
    "Labels",
  );
}

const look = readFileSync(new URL("label-boxes.js", import.meta.url), "utf8");
interface Seen {
  readonly sheets: number;
  readonly labels: number;
  readonly faults: readonly string[];
}

const has = (program: string): boolean => spawnSync("which", [program]).status === 0;

describe.skipIf(browserAt === undefined)("300 labels in a browser", () => {
  const page = printedPage(3);
  const folder = temporaryFolder();
  const sizes = { a4: "595 x 842", letter: "612 x 792" };

  const kinds: readonly CodeKind[] = ["datamatrix", "qr"];
  it.each(byTurns([...labelSheets.keys()]).map((name, index) => [name, kinds[index % 2] ?? "qr"] as const))(
    "lie in their places on %s, with %s",
    async (name, kind) => {
      await page().setContent(documentOf(name, kind));
      const { columns, rows, paper } = sheetNamed(name);
      const sheets = Math.ceil(ids.length / (columns * rows));
      expect(await page().evaluate<Seen>(look)).toEqual({ sheets, labels: ids.length, faults: [] });
      expect(await printed(page())).toBe(`${sheets} of ${sizes[paper]}`);
    },
  );

  it("would be seen lying over each other", async () => {
    const html = documentOf("a4-24", "datamatrix");
    const worse = async (text: string): Promise<string> => {
      await page().setContent(text);
      return (await page().evaluate<Seen>(look)).faults.join("\n");
    };
    expect(await worse(html.replace("</style>", "text { font-size: 6px }</style>"))).toContain("lies over");
    expect(await worse(html.replace("</style>", "text { letter-spacing: 3px }</style>"))).toContain(
      "leaves its label",
    );
  });

  it.each([
    ["a4-65", "datamatrix"],
    ["letter-30", "qr"],
  ] as const)("on %s, %s, are read back to their numbers", async (name, kind) => {
    const { buffer, byteOffset, length } = readFileSync(resolve("zxing-wasm/reader/zxing_reader.wasm"));
    await prepareZXingModule({
      overrides: { wasmBinary: buffer.slice(byteOffset, byteOffset + length) as ArrayBuffer },
      fireImmediately: true,
    });
    await page().setContent(documentOf(name, kind));
    const read: string[] = [];
    const { columns, rows } = sheetNamed(name);
    const places = columns * rows;
    const sheets = await page().locator(".sheet").all();
    // The first sheet, the last with its long numbers, and one in between that the seed names; a long run looks at all.
    const isLookedAt = (index: number): boolean =>
      isWhole || [0, 1 + (seed % (sheets.length - 2)), sheets.length - 1].includes(index);
    const expected = ids.filter((_, at) => isLookedAt(Math.floor(at / places)));
    for (const [index, sheet] of sheets.entries()) {
      if (!isLookedAt(index)) continue;
      const picture = await sheet.screenshot();
      const codes = await readBarcodes(picture, {
        formats: [kind === "qr" ? "QRCode" : "DataMatrix"],
        maxNumberOfSymbols: 255,
        tryHarder: true,
      });
      read.push(...codes.map(({ text }) => text));
      if (index > 0) continue;
      // Decoders of another make, where there are any.
      const file = join(folder, "sheet.png");
      writeFileSync(file, picture);
      const all = new Set(ids);
      const [program, args] =
        kind === "qr" ? ["zbarimg", ["-q", "--raw"]] : ["dmtxread", ["-n", "-N10", "-m4000"]];
      if (!has(String(program))) continue;
      const { stdout } = spawnSync(String(program), [...(args as string[]), file], { encoding: "utf8" });
      const lines = stdout.split("\n").filter(Boolean);
      expect(lines.length).toBeGreaterThan(0);
      expect(lines.filter((line) => !all.has(line))).toEqual([]);
    }
    expect(read.sort()).toEqual(expected.sort());
  });
});

describe("sheets of labels", () => {
  it("fit their paper", () => {
    for (const sheet of labelSheets.values()) {
      expect(labelSheetFault(sheet)).toBeUndefined();
      const last = labelAt(sheet, sheet.columns * sheet.rows - 1);
      const [wide, high] = paperSizes[sheet.paper];
      expect(last[0] + sheet.width).toBeLessThan(wide + 0.1);
      expect(last[1] + sheet.height).toBeLessThan(high + 0.1);
    }
  });

  it("are refused where they do not", () => {
    const sheet = sheetNamed("a4-24");
    expect(labelSheetFault({ ...sheet, columns: 4 })).toEqual([
      "columns",
      "4 labels across reach to 280 mm, and the paper is 210 mm wide",
    ]);
    expect(labelSheetFault({ ...sheet, top: 20 })?.[0]).toBe("rows");
    expect(labelSheetFault({ ...sheet, across: 60 })?.[0]).toBe("across");
    expect(labelSheetFault({ ...sheet, down: 30 })?.[0]).toBe("down");
  });

  it("begin at the first free label, and repeat copies side by side", () => {
    expect(onSheets(["a", "b"], { places: 4, start: 3, copies: 2 })).toEqual([
      [undefined, undefined, "a", "a"],
      ["b", "b"],
    ]);
    expect(onSheets([], { places: 4, start: 1, copies: 1 })).toEqual([]);
  });

  it("have no room for a code whose squares would be too small", () => {
    const [container] = containers;
    if (container === undefined) throw new Error("no container");
    const label = { ...labelOf(container), id: "x".repeat(60) };
    const wish: LabelWish = { sheet: { ...sheetNamed("a4-65"), height: 14 }, code: "qr", edges: false };
    expect(drawLabel(label, wish)).toMatch(/^its code needs \d+ squares of 0.3 mm, and this label has room/);
    expect(codeOf("datamatrix", "01-A").squares).toBe(10);
    expect(codeOf("qr", "01-A").squares).toBe(21);
  });
});
