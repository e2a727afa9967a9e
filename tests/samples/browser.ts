/** A page in the browser that is there, as it would be printed. */
import { existsSync } from "node:fs";
import { type Browser, chromium, type Page } from "playwright-core";
import { afterAll, beforeAll } from "vitest";

export const browserAt = ["/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome"].find(
  existsSync,
);

/** @param deviceScaleFactor dots for each of 96 an inch @returns the page, open while the tests of a file run */
export function printedPage(deviceScaleFactor = 1): () => Page {
  let browser: Browser | undefined;
  let page: Page | undefined;
  beforeAll(async () => {
    browser = await chromium.launch({
      ...(browserAt && { executablePath: browserAt }),
      args: ["--no-sandbox"],
    });
    page = await browser.newPage({ viewport: { width: 820, height: 1130 }, deviceScaleFactor });
    await page.emulateMedia({ media: "print" });
  });
  afterAll(async () => browser?.close());
  return () => {
    if (page === undefined) throw new Error("the browser did not start");
    return page;
  };
}

/** Pages and their size in points, as they come out of a printer. */
export async function printed(page: Page): Promise<string> {
  const pdf = (await page.pdf({ preferCSSPageSize: true })).toString("latin1");
  const size = /\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/.exec(pdf);
  const [wide, high] = [size?.[1], size?.[2]].map((points) => Math.round(Number(points)));
  return `${[...pdf.matchAll(/\/Type \/Page\b/g)].length} of ${wide} x ${high}`;
}
