/** Around the whole run: one folder for everything temporary, and one seed for everything random. */
import { chmodSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { seedName, shareName } from "./random.ts";

export default function setup(): () => void {
  const folder = mkdtempSync(join(tmpdir(), "carcase-tests-"));
  // Some programs under test run as another user.
  chmodSync(folder, 0o755);
  for (const name of ["TMPDIR", "TEMP", "TMP"]) process.env[name] = folder;

  // The log of a job is no place for annotations of cases that are examples.
  delete process.env.GITHUB_ACTIONS;
  process.env.XDG_CACHE_HOME = join(folder, "cache");
  process.env[seedName] ??= String(Date.now() % 2 ** 31);
  process.env[shareName] ??= "0.1";
  const { [seedName]: seed, [shareName]: share } = process.env;
  console.log(
    `random tests: ${share} of their runs, seed ${seed}; again with ${seedName}=${seed} ${shareName}=${share}`,
  );
  return () => rmSync(folder, { recursive: true, force: true });
}
