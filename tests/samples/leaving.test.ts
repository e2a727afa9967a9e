/** Labels, parcels and the page for the laboratory of a visit a syndrome, kept as files to be read by people. */
import { readdirSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { readCases, type Visit } from "../../src/cases/index.ts";
import { markdownOf } from "../../src/formats/page/markdown.ts";
import { makeStyle } from "../../src/formats/page/style.ts";
import { textOf } from "../../src/formats/page/text.ts";
import { displayWidth } from "../../src/formats/page/width.ts";
import { formBlocks, formDocument } from "../../src/formats/samples/form.ts";
import { drawLabel } from "../../src/formats/samples/labels.ts";
import { parcelBlocks } from "../../src/formats/samples/parcel.ts";
import { labelSheets } from "../../src/knowledge/label-sheets.ts";
import { rules } from "../../src/lint/index.ts";
import { containersOf } from "../../src/record/index.ts";
import { formOf } from "../../src/sending/form.ts";
import { labelOf } from "../../src/sending/labels.ts";
import { packedVisit } from "../../src/sending/parcel.ts";
import { browserAt, printed, printedPage } from "./browser.ts";

const folder = "tests/fixtures/samples";
const syndromes = readdirSync(folder, { withFileTypes: true })
  .filter((entry) => entry.isDirectory())
  .map(({ name }) => name);

function visitIn(path: string): Visit {
  const { visits, unreadable } = readCases([path]);
  const [visit, ...others] = visits;
  if (visit === undefined || others.length + unreadable.length > 0) throw new Error(path);
  return visit;
}

const plain = makeStyle(false);
const parcelText = (visit: Visit): string => {
  const packed = packedVisit(visit);
  return packed === undefined ? "" : textOf(parcelBlocks([packed]), plain);
};

/** What is printed on each label, a line each. */
function labelTexts(visit: Visit): string {
  const sheet = labelSheets.get("a4-24");
  if (sheet === undefined) throw new Error("no sheet");
  return containersOf(visit)
    .map((container) => {
      const drawn = drawLabel(labelOf(container), { sheet, code: "datamatrix", edges: false });
      if (typeof drawn === "string") throw new Error(drawn);
      return `${[...drawn.body.text.matchAll(/<text[^>]*>([^<]*)</g)].map((found) => found[1]).join(" | ")}\n`;
    })
    .join("");
}

describe("a visit a syndrome", () => {
  it("has one for each set of samples", () => expect(syndromes.length).toBeGreaterThan(14));

  it.each(syndromes)("%s", async (name) => {
    const visit = visitIn(`${folder}/${name}`);
    const golden = (what: string): string => `../fixtures/samples/${name}/${what}`;
    const form = formOf(visit);
    if (form === undefined) throw new Error("nothing for a laboratory");
    const texts = [
      ["labels.txt", labelTexts(visit)],
      ["parcel.txt", parcelText(visit)],
      ["form.txt", textOf(formBlocks([form]), plain)],
    ] as const;
    for (const [what, text] of texts) {
      await expect(text).toMatchFileSnapshot(golden(what));
      if (what === "labels.txt") continue;
      const wide = text.split("\n").filter((line) => displayWidth(line) > 80);
      expect(wide).toEqual([]);
    }
    // Nothing of the page is lost on the way into a report.
    const markdown = markdownOf(formBlocks([form]));
    for (const { id } of containersOf(visit)) if (texts[2][1].includes(id)) expect(markdown).toContain(id);
  });
});

describe("a parcel that is wrong", () => {
  it("shows every fault of packing", async () => {
    const text = parcelText(visitIn("tests/fixtures/wrong-parcel"));
    await expect(text).toMatchFileSnapshot("../fixtures/wrong-parcel/parcel.txt");
    const shown = new Set(
      [...text.replaceAll(/\s+/g, " ").matchAll(/\[([a-z0-9-]+)\]/g)].map(([, id]) => id),
    );
    const all = rules.filter(({ family }) => family === "packaging").map(({ id }) => id);
    expect(all.filter((id) => !shown.has(id))).toEqual([]);
  });

  it("is another one by air than by road", () => {
    const visit = visitIn(`${folder}/respiratory`);
    const [byAir] = packedVisit(visit, "air")?.parcels ?? [];
    const [byRoad] = packedVisit(visit, "road")?.parcels ?? [];
    expect(byRoad?.air.map(({ rule }) => rule)).toEqual([
      "air-primary-too-large",
      "air-volume-too-large",
      "air-weight-too-large",
    ]);
    expect(byAir?.air).toEqual([]);
    expect(byAir?.checks.length).toBe((byRoad?.checks.length ?? 0) + 3);
    expect(byRoad?.findings).toEqual([]);
    const [byHand] = packedVisit(visit, "hand")?.parcels ?? [];
    expect(byHand?.outside.join()).not.toContain("UN3373");
  });

  it("is proposed where none is recorded, and then keeps the rules but for what nobody looked at", () => {
    for (const name of syndromes) {
      const visit = visitIn(`${folder}/${name}`);
      const { parcels: _, ...record } = visit.record;
      const packed = packedVisit({ ...visit, record });
      expect(packed?.proposed).toBe(true);
      expect(packed?.left).toEqual([]);
      const found = (packed?.parcels ?? []).flatMap(({ findings }) => findings.map(({ rule }) => rule));
      const unseen = [
        "parcel-contact-missing",
        "parcel-packing-unrecorded",
        "dry-ice-weight-missing",
        "dry-ice-not-vented",
      ];
      expect(found).toContain("parcel-packing-unrecorded");
      expect(found.filter((rule) => !unseen.includes(rule))).toEqual([]);
    }
  });
});

describe.skipIf(browserAt === undefined)("the page for the laboratory, printed", () => {
  const page = printedPage();
  const sizes = { a4: "595 x 842", letter: "612 x 792" } as const;
  const visits = [...syndromes.map((name) => `${folder}/${name}`), "cases-example/alder-farm/2026-03-14"];

  it.each(["a4", "letter"] as const)("is one page of %s, and nothing runs out of it", async (paper) => {
    const wrong: string[] = [];
    for (const path of visits) {
      const form = formOf(visitIn(path));
      if (form === undefined) throw new Error(path);
      await page().setContent(formDocument([form], paper));
      const size = await printed(page());
      if (size !== `1 of ${sizes[paper]}`) wrong.push(`${path}: ${size}`);
      const wide = await page().evaluate<number>(
        "document.querySelector('.page').scrollWidth - document.querySelector('.page').clientWidth",
      );
      if (wide > 1) wrong.push(`${path}: ${wide} too wide`);
    }
    expect(wrong).toEqual([]);
  });
});
