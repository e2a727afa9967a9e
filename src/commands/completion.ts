/** `carcase completion`: the script with which a shell completes what is typed, as it was made at build. */
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { shells } from "./choices.ts";
import { oneOf } from "./parsers.ts";
import type { Run } from "./run.ts";

export function completion(run: Run): number {
  const shell = oneOf("completion", run.paths[0] ?? "", shells, "shell");
  const { resolve } = createRequire(import.meta.url);
  run.write(readFileSync(resolve(`#completion/carcase.${shell}`), "utf8"));
  return run.end();
}
