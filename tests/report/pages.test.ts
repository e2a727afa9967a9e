/** An archive as pages: whole, only what changed written again, nothing of others lost, and a search that works from the disk. */
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { chromium } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { carcase, wide } from "../end-to-end/run.ts";

const browserAt = ["/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome"].find(
  existsSync,
);
const archive = "cases-example/alder-farm";

describe("the pages of an archive", () => {
  let folder = "";
  let pages = "";
  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), "carcase-pages-"));
    pages = join(folder, "pages");
    expect(carcase(["report", archive, "--pages", pages], { env: wide }).code).toBe(0);
  });
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  it("lead to one another, and nowhere else", () => {
    const names = new Set(readdirSync(pages));
    for (const name of names) {
      if (!name.endsWith(".html")) continue;
      const text = readFileSync(join(pages, name), "utf8");
      for (const [, to = ""] of text.matchAll(/ (?:href|src)="([^"]*)"/g))
        expect(names.has(to), `${name}: ${to}`).toBe(true);
    }
    expect(names.has("pig-alder-2026-03-14-01.html")).toBe(true);
  });

  it("are not written again where nothing changed", () => {
    const before = statSync(join(pages, "index.html")).ino;
    expect(carcase(["report", archive, "--pages", pages], { env: wide }).err).toContain("0 written");
    expect(statSync(join(pages, "index.html")).ino).toBe(before);
    expect(readdirSync(folder)).toEqual(["pages"]);
  });

  it("take no folder in which something else lies", () => {
    const mine = join(pages, "notes.txt");
    writeFileSync(mine, "mine");
    const { code, err } = carcase(["report", archive, "--pages", pages], { env: wide });
    expect([code, readFileSync(mine, "utf8")]).toEqual([2, "mine"]);
    expect(err).toContain("was not written by this command");
    rmSync(mine);
  });

  it.skipIf(browserAt === undefined)(
    "find a pig by a word of its findings, by a part of it, and with a slip",
    async () => {
      const browser = await chromium.launch({
        ...(browserAt && { executablePath: browserAt }),
        args: ["--no-sandbox"],
      });
      try {
        const page = await browser.newPage();
        const heard: string[] = [];
        page.on("console", (message) => heard.push(message.text()));
        page.on("pageerror", (error) => heard.push(String(error)));
        page.on("request", (request) => {
          if (!request.url().startsWith("file:")) heard.push(request.url());
        });
        await page.goto(pathToFileURL(join(pages, "index.html")).href);
        for (const sought of ["bronchopneumonia", "bronchopn", "bronchopnuemonia"]) {
          await page.fill("#sought", sought);
          expect(await page.locator("#found a").count(), sought).toBeGreaterThan(0);
        }
        await page.locator("#found a").first().click();
        expect(await page.title()).toContain("alder-2026");
        expect(heard).toEqual([]);
      } finally {
        await browser.close();
      }
    },
  );
});
