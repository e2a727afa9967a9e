// All that can be typed: the program with its commands and options, and the words that stand behind them.
import { rmSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";
import { build } from "esbuild";

/** Loads it from the sources; @param settings of the program's bundle */
export async function loadTyped(folder, settings) {
  const module = join(folder, "typed.cjs");
  await build({
    ...settings,
    splitting: false,
    format: "cjs",
    stdin: {
      contents: 'export * from "./program.ts"; export * from "./choices.ts";',
      resolveDir: join(settings.absWorkingDir, "src/commands"),
    },
    outfile: module,
    logOverride: { "empty-import-meta": "silent" },
  });
  const typed = createRequire(import.meta.url)(module);
  rmSync(module);
  return typed;
}
