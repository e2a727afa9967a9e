// tsc declares every module that the public interface is made with; users read only those that its declarations name.
import { readdirSync, readFileSync, rmdirSync, rmSync } from "node:fs";
import { dirname, join } from "node:path";

const named = /(?:\bfrom|\bimport)\s*\(?\s*"(\.[^"]+)\.[jt]s"/g;

/** Takes away the declarations in `folder` that none of `entries` reaches. */
export function keepReached(folder, entries) {
  const reached = new Set();
  const reach = (file) => {
    if (reached.has(file)) return;
    reached.add(file);
    for (const [, path] of readFileSync(file, "utf8").matchAll(named))
      reach(join(dirname(file), `${path}.d.ts`));
  };
  for (const entry of entries) reach(join(folder, entry));
  const left = (at) =>
    readdirSync(at, { withFileTypes: true }).filter((one) => {
      const path = join(at, one.name);
      if (one.isDirectory()) {
        if (left(path) > 0) return true;
        rmdirSync(path);
        return false;
      }
      if (reached.has(path)) return true;
      rmSync(path);
      return false;
    }).length;
  left(folder);
}
