/** A page as PDF, through a browser that is there: `carcase report --format pdf`. */
import type * as Processes from "node:child_process";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { UsageError } from "./usage-error.ts";
import { writeWhole } from "./write-file.ts";

/** What a browser that can print is called. */
const browsers = [
  "chromium",
  "chromium-browser",
  "google-chrome",
  "google-chrome-stable",
  "chrome",
  "msedge",
];

/** Loaded when it is asked for, as for git. */
const processes = () => createRequire(import.meta.url)("node:child_process") as typeof Processes;

/**
 * Prints a page. The browser gets a folder of its own, no network, and is gone when the page is printed.
 * @param named the browser to use, from CARCASE_BROWSER
 * @throws UsageError where none is there, and where it does not print
 */
export function printPdf(html: string, named = process.env.CARCASE_BROWSER): Buffer {
  const folder = mkdtempSync(join(tmpdir(), "carcase-print-"));
  try {
    const [page, pdf] = [join(folder, "page.html"), join(folder, "page.pdf")];
    writeWhole(page, html, () => undefined);
    for (const browser of named === undefined ? browsers : [named]) {
      const { error, status } = processes().spawnSync(
        browser,
        [...options(folder), `--print-to-pdf=${pdf}`, pathToFileURL(page).href],
        {
          stdio: "ignore",
          timeout: 120_000,
        },
      );
      if (error !== undefined && (error as NodeJS.ErrnoException).code === "ENOENT") continue;
      if (status !== 0)
        throw new UsageError(
          `${browser} did not print the report; write it as HTML, and print it from a browser`,
        );
      return readFileSync(pdf);
    }
    throw new UsageError(
      named === undefined
        ? "no browser was found that can print; write the report as HTML and print it, or name one in CARCASE_BROWSER"
        : `CARCASE_BROWSER: there is no program "${named}"`,
    );
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

const options = (folder: string): string[] => [
  "--headless",
  "--disable-gpu",
  "--no-first-run",
  "--no-pdf-header-footer",
  "--disable-extensions",
  // Nothing is asked of the network, whatever stands in a page.
  "--host-resolver-rules=MAP * ~NOTFOUND",
  `--user-data-dir=${join(folder, "profile")}`,
  ...(process.getuid?.() === 0 ? ["--no-sandbox"] : []),
];
