/** Sheets as a browser sets them for the printer: each on whole pages, nothing clipped, nothing over anything else, nothing empty. */
import { existsSync, readFileSync } from "node:fs";
import { type Browser, chromium, type Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { openAlarmsOf } from "../../src/alarms/index.ts";
import { readCases } from "../../src/cases/index.ts";
import { pigSheets, tallySheet as tallyHtml } from "../../src/formats/sheet/html-sheet.ts";
import { papers } from "../../src/formats/sheet/page.ts";
import { languages, pigSheet, type TablePig, tallySheet, wordsIn } from "../../src/sheet/index.ts";
import { tablePig } from "./made.ts";

const browserAt = ["/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome"].find(
  existsSync,
);

const example: readonly TablePig[] = readCases(["cases-example/alder-farm/2026-03-14"]).cases.map((one) => ({
  id: one.id,
  one,
  beside: [],
  alarms: openAlarmsOf({ cases: [one], visits: [] }),
}));
const some = (id: string): TablePig[] => example.filter((pig) => pig.id.endsWith(id));

const long = "a-name-that-somebody-made-far-too-long-for-any-box-of-a-sheet ".repeat(8).trim();
const wide = "WWWWWWWWMMMMMMMM".repeat(6);
const stopped = tablePig(
  "pig: {age: 58 d}\nselection: {basis: clinical, signs: [sneezing]}\nalarm_check: {before_knife: {vesicles: seen, throat_swelling: seen}}",
);
const manyAlarms = stopped.alarms.flatMap((one) =>
  Array.from({ length: 12 }, (_, index) => ({ ...one, id: `${one.id}-${index}` })),
);

/** Pigs that ask for as much, as little and as unlike things as pigs do. */
const pigs: readonly TablePig[] = [
  ...some("-01"),
  ...some("-13"),
  tablePig(
    "pig: {class: adult, sex: female}\nselection: {basis: clinical, signs: [abortion, cough, diarrhoea, convulsions, lameness, haematuria, skin-lesions]}",
  ),
  tablePig("pig: {class: aborted}\nselection: {basis: clinical}"),
  tablePig("protocol: enteric\npig: {age: 12 d}\nselection: {basis: clinical, signs: [diarrhoea]}"),
  tablePig("pig: {age: 100 d}\nselection: {basis: found-dead}\ndeath: {manner: found-dead}"),
  stopped,
  { ...stopped, alarms: manyAlarms },
  {
    ...tablePig("pig: {age: 58 d}\nselection: {basis: clinical, signs: [sneezing]}"),
    id: long,
    tag: wide,
    complaint: long,
    examiner: wide,
    date: long,
  },
];
const line = Array.from({ length: 30 }, (_, index) => ({
  ...tablePig("protocol: slaughter-check\npig: {age: 24 wk}\ndeath: {manner: slaughtered}"),
  id: `line-${String(index + 1).padStart(2, "0")}`,
  tag: index === 3 ? wide : `A ${index}`,
}));

interface Seen {
  readonly pages: number;
  readonly faults: readonly string[];
}

/** Is run in the browser, which has a world of its own. */
const look = readFileSync(new URL("look.js", import.meta.url), "utf8");

describe.skipIf(browserAt === undefined)("in a browser", () => {
  let browser: Browser | undefined;
  let page: Page | undefined;
  beforeAll(async () => {
    browser = await chromium.launch({
      ...(browserAt && { executablePath: browserAt }),
      args: ["--no-sandbox"],
    });
    page = await browser.newPage();
    await page.emulateMedia({ media: "print" });
  });
  afterAll(async () => browser?.close());

  const seen = async (html: string): Promise<Seen> => {
    await page?.setContent(html);
    return (await page?.evaluate<Seen>(look)) ?? { pages: 0, faults: ["no browser"] };
  };
  /** The same, printed. */
  const render = async (
    html: string,
  ): Promise<Seen & { readonly printed: number; readonly size: string }> => {
    const found = await seen(html);
    const pdf =
      (await page?.pdf({ preferCSSPageSize: true, printBackground: false }))?.toString("latin1") ?? "";
    const size = /\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/.exec(pdf);
    return {
      ...found,
      printed: [...pdf.matchAll(/\/Type \/Page\b/g)].length,
      size: [size?.[1], size?.[2]].map((points) => Math.round(Number(points))).join(" x "),
    };
  };

  const sizes = { a4: "595 x 842", letter: "612 x 792" };
  const sheets = languages.flatMap((language) => papers.map((paper) => ({ language, paper })));

  it.each(sheets)("sets the sheets of pigs in $language on $paper", async ({ language, paper }) => {
    const words = wordsIn(language);
    const { pages, printed, size, faults } = await render(
      pigSheets(
        pigs.map((pig) => pigSheet(pig, words)),
        paper,
        words,
      ),
    );
    expect(faults).toEqual([]);
    expect([printed, size]).toEqual([pages, sizes[paper]]);
  });

  it.each(sheets)(
    "sets a pig on front and back in $language on $paper, a pig of the line on one page",
    async ({ language, paper }) => {
      const words = wordsIn(language);
      const pagesOf = (pig: TablePig): number =>
        pigSheets([pigSheet(pig, words)], paper, words).split('<section class="page">').length - 1;
      expect(some("-01").map(pagesOf)).toEqual([2]);
      expect(some("-13").map(pagesOf)).toEqual([1]);
      expect(pagesOf(stopped)).toBe(1);
    },
  );

  it.each(sheets)(
    "sets thirty pigs of a tally in $language on one page of $paper",
    async ({ language, paper }) => {
      const words = wordsIn(language);
      const { pages, printed, size, faults } = await render(tallyHtml(tallySheet(line, words), paper, words));
      expect(faults).toEqual([]);
      expect([pages, printed, size]).toEqual([1, 1, sizes[paper]]);
    },
  );

  it.each([1, 3, 12, 30])("keeps the rows of %i pigs low enough to be filled in", async (many) => {
    const words = wordsIn("en");
    const { faults } = await seen(tallyHtml(tallySheet(line.slice(0, many), words), "a4", words));
    expect(faults).toEqual([]);
    const rows =
      "[...document.querySelectorAll('tbody tr')].map((row) => row.getBoundingClientRect().height * 25.4 / 96)";
    const heights = (await page?.evaluate<number[]>(rows)) ?? [];
    expect(heights).toHaveLength(many);
    expect(Math.max(...heights)).toBeLessThanOrEqual(10.5);
    expect(Math.min(...heights)).toBeGreaterThan(5);
  });

  it("would see what is clipped, laid over or empty", async () => {
    const words = wordsIn("en");
    const html = pigSheets(
      some("-01").map((pig) => pigSheet(pig, words)),
      "a4",
      words,
    );
    const worse = async (css: string): Promise<string> =>
      (await seen(html.replace("</style>", `${css}</style>`))).faults.join("\n");
    expect(await worse(".row { min-height: 9mm }")).toContain("is too full");
    expect(await worse(".row > span:first-child { white-space: nowrap; font-size: 14pt }")).toContain(
      "lies over",
    );
    expect(await worse(".facts span { position: relative; left: 40mm }")).toContain("runs out of its box");
    expect(await worse(".drawings svg { height: 9mm }")).toContain("too small");
  });
});
