/** Reports as a browser shows and prints them: nothing clipped, nothing over anything else, nothing fetched, readable by everyone. */
import { existsSync, readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { type Browser, chromium, type Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { reportHtml } from "../../src/formats/report/html.ts";
import { audiences, reportWords } from "../../src/report/index.ts";
import { languages } from "../../src/sheet/index.ts";
import { dress, hostileReport, photographed, reports } from "./made.ts";

const browserAt = ["/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome"].find(
  existsSync,
);
const look = readFileSync(new URL("look.js", import.meta.url), "utf8");
const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

const pages = (["case", "visit", "farm"] as const).flatMap((of) =>
  audiences.map((audience) => ({ of, audience })),
);

describe.skipIf(browserAt === undefined)("in a browser", () => {
  let browser: Browser | undefined;
  let page: Page | undefined;
  let heard: string[] = [];
  beforeAll(async () => {
    browser = await chromium.launch({
      ...(browserAt && { executablePath: browserAt }),
      args: ["--no-sandbox"],
    });
    page = await browser.newPage();
    page.on("console", (message) => heard.push(message.text()));
    page.on("pageerror", (error) => heard.push(String(error)));
    page.on("request", (request) => heard.push(`asks for ${request.url()}`));
  });
  afterAll(async () => browser?.close());

  const faultsAt = async (html: string, width: number): Promise<readonly string[]> => {
    heard = [];
    await page?.setViewportSize({ width, height: 900 });
    await page?.setContent(html);
    return [...((await page?.evaluate<string[]>(look)) ?? ["no browser"]), ...heard];
  };

  it.each(pages)(
    "a $of for a $audience is whole at 360 and 1280 px, in every language",
    async ({ of, audience }) => {
      for (const language of languages)
        for (const width of [360, 1280])
          expect(
            await faultsAt(reportHtml(reports[of], audience, reportWords(language)), width),
            `${language} ${width}`,
          ).toEqual([]);
    },
  );

  it.each(pages)("a $of for a $audience breaks no rule of accessibility", async ({ of, audience }) => {
    await page?.setViewportSize({ width: 1280, height: 900 });
    await page?.setContent(reportHtml(reports[of], audience, reportWords("en")));
    await page?.evaluate(axe);
    const found = await page?.evaluate<string[]>(
      "axe.run().then(({ violations }) => violations.flatMap(({ id, nodes }) => nodes.map(({ html }) => id + ': ' + html.slice(0, 120))))",
    );
    expect(found).toEqual([]);
  });

  it.each(["A4", "Letter"] as const)("prints on %s", async (format) => {
    for (const of of ["case", "visit", "farm"] as const) {
      await page?.setContent(reportHtml(reports[of], "colleague", reportWords("en")));
      const pdf = (await page?.pdf({ format }))?.toString("latin1") ?? "";
      expect([...pdf.matchAll(/\/Type \/Page\b/g)].length, of).toBeGreaterThan(1);
    }
  });

  it("is whole and inert whatever the record says", async () => {
    const html = reportHtml(hostileReport(), "colleague", reportWords("en"));
    for (const width of [360, 1280]) expect(await faultsAt(html, width)).toEqual([]);
    expect(await page?.evaluate<number>("document.querySelectorAll('script, img, iframe, a').length")).toBe(
      0,
    );
  });

  it("is whole, and breaks no rule, with all that a practice puts around it", async () => {
    for (const audience of audiences) {
      const html = reportHtml(photographed, audience, reportWords("en"), [], dress);
      for (const width of [360, 1280])
        expect(await faultsAt(html, width), `${audience} ${width}`).toEqual([]);
      await page?.evaluate(axe);
      expect(
        await page?.evaluate<unknown[]>("axe.run().then(({ violations }) => violations.map(({ id }) => id))"),
      ).toEqual([]);
      expect(await page?.evaluate<number>("document.images.length")).toBe(2);
    }
  });
});
