/** Around the whole run: one folder for everything temporary, and one seed for everything random. */
import { chmodSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { heededVariables } from "../src/commands/config.ts";
import { seedName, shareName } from "./random.ts";

export default function setup(): () => void {
  const folder = mkdtempSync(join(tmpdir(), "carcase-tests-"));
  // Some programs under test run as another user.
  chmodSync(folder, 0o755);
  for (const name of ["TMPDIR", "TEMP", "TMP"]) process.env[name] = folder;

  // One world for every machine: a runner's variables, a terminal or a language would change what is printed.
  for (const name of Object.keys(process.env))
    if (/^(LC_\w+|LANGUAGE)$/.test(name) || name in heededVariables) delete process.env[name];
  Object.assign(process.env, { TERM: "xterm", LANG: "C.UTF-8" });
  process.env.XDG_CACHE_HOME = join(folder, "cache");
  process.env[seedName] ??= String(Date.now() % 2 ** 31);
  process.env[shareName] ??= "0.1";
  const { [seedName]: seed, [shareName]: share } = process.env;
  console.log(
    `random tests: ${share} of their runs, seed ${seed}; again with ${seedName}=${seed} ${shareName}=${share}`,
  );
  return () => rmSync(folder, { recursive: true, force: true });
}
