/** Folders that last as long as one test file. */
import { mkdirSync, mkdtempSync, realpathSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { afterAll } from "vitest";

/** A new empty folder, removed at the end. */
export function temporaryFolder(): string {
  const folder = realpathSync(mkdtempSync(join(tmpdir(), "carcase-")));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

/** Writes files into a folder, making the folders between. */
export function put(folder: string, files: Readonly<Record<string, string | Uint8Array>>): void {
  for (const [name, content] of Object.entries(files)) {
    const file = join(folder, name);
    mkdirSync(dirname(file), { recursive: true });
    writeFileSync(file, content);
  }
}

/** A small case that can be read, with more keys if wanted. */
export const smallCase = (id = "x-1", more = ""): string => `format: 1\ncase: ${id}\n${more}`;
