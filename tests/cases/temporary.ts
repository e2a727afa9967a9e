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

/**
 * A folder in which many examples take turns: each call leaves in it the files it is given and no others, and writes only
 * what is not there yet. It goes with the temporary folder of the whole run.
 */
export function folderInTurns(): (files: Readonly<Record<string, string | Uint8Array>>) => string {
  const held = new Map<string, string | Uint8Array>();
  let folder: string | undefined;
  return (files) => {
    folder ??= realpathSync(mkdtempSync(join(tmpdir(), "carcase-in-turns-")));
    const wanted = Object.keys(files);
    for (const name of held.keys()) {
      if (Object.hasOwn(files, name)) continue;
      const parent = dirname(name);
      const isOver = parent !== "." && !wanted.some((other) => other.startsWith(`${parent}/`));
      rmSync(join(folder, isOver ? parent : name), { recursive: true, force: true });
      held.delete(name);
    }
    for (const [name, content] of Object.entries(files)) {
      if (held.get(name) === content) continue;
      put(folder, { [name]: content });
      held.set(name, content);
    }
    return folder;
  };
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
