/** Pages that are no reports: the linter's, the list of an archive, findings by organ; and a report as PDF. */
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type Browser, chromium, type Page } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { carcase } from "../end-to-end/run.ts";

const browserAt = ["/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome"].find(
  existsSync,
);
const look = readFileSync(new URL("look.js", import.meta.url), "utf8");
const axe = readFileSync(createRequire(import.meta.url).resolve("axe-core/axe.min.js"), "utf8");

describe.skipIf(browserAt === undefined)("in a browser", () => {
  let browser: Browser | undefined;
  let page: Page | undefined;
  const folder = mkdtempSync(join(tmpdir(), "carcase-others-"));
  beforeAll(async () => {
    browser = await chromium.launch({
      ...(browserAt && { executablePath: browserAt }),
      args: ["--no-sandbox"],
    });
    page = await browser.newPage();
    carcase(["report", "cases-example/alder-farm", "--pages", join(folder, "pages")]);
    carcase(["lint", "cases-example/incomplete", "--format", "html", "-o", join(folder, "lint.html")]);
  });
  afterAll(async () => {
    await browser?.close();
    rmSync(folder, { recursive: true, force: true });
  });

  const faultsOf = async (file: string): Promise<string[]> => {
    const found: string[] = [];
    for (const width of [360, 1280]) {
      await page?.setViewportSize({ width, height: 900 });
      await page?.goto(`file://${file}`);
      found.push(...((await page?.evaluate<string[]>(look)) ?? ["no browser"]));
    }
    await page?.evaluate(axe);
    const broken = await page?.evaluate<string[]>(
      "axe.run().then(({ violations }) => violations.flatMap(({ id, nodes }) => nodes.map(({ html }) => id + ': ' + html.slice(0, 120))))",
    );
    return [...found, ...(broken ?? [])];
  };

  it("the linter's page is whole, and breaks no rule of accessibility", async () => {
    expect(await faultsOf(join(folder, "lint.html"))).toEqual([]);
  });

  it("so are the list of an archive, a farm, and the findings of each organ", async () => {
    const names = readdirSync(join(folder, "pages")).filter((name) => /^(?:index|farm|organ)/.test(name));
    expect(names.length).toBeGreaterThan(10);
    for (const name of names.slice(0, 6))
      expect(await faultsOf(join(folder, "pages", name)), name).toEqual([]);
  });

  it("a report is printed as PDF, and takes the place of no other file", () => {
    const file = join(folder, "report.pdf");
    const report = ["report", "cases-example/alder-farm/2026-03-14/pig-01.yaml", "--format", "pdf", "-o"];
    expect(carcase([...report, file]).code).toBe(0);
    expect(readFileSync(file).subarray(0, 5).toString()).toBe("%PDF-");
    expect(carcase([...report, join(folder, "lint.html")]).code).toBe(2);
  });
});
