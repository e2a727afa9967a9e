/** Archives on disk for the tests, read by the real reader. */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { type Archive, readCases } from "../../src/cases/index.ts";

/** Reads files from a new folder that is gone afterwards. @param files content by path; a record becomes YAML */
export function archiveOf(files: Readonly<Record<string, object>>): Archive {
  const folder = mkdtempSync(join(tmpdir(), "herd-"));
  try {
    for (const [path, content] of Object.entries({ "carcase.yaml": { format: 1 }, ...files })) {
      const location = join(folder, path);
      mkdirSync(dirname(location), { recursive: true });
      writeFileSync(location, JSON.stringify(content));
    }
    const archive = readCases(["."], { from: folder });
    if (archive.unreadable.length > 0) throw new Error(JSON.stringify(archive.unreadable));
    return archive;
  } finally {
    rmSync(folder, { recursive: true });
  }
}

export const farm = (id: string) => ({ format: 1, farm: id });
export const visit = (id: string, date: string) => ({ format: 1, visit: id, date });
