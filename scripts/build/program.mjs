// The program that bin/carcase.js loads: CommonJS with shared pieces, because only that can be given to V8 with the code
// it kept from an earlier run. A command's own piece is loaded when the command is called.
import { spawnSync } from "node:child_process";
import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { build, transform } from "esbuild";
import { root } from "../generate/read.mjs";

/** Builds it into `program` of a folder. */
export async function buildProgram(folder, settings) {
  const program = join(folder, "program");
  await build({
    ...settings,
    entryPoints: { main: "src/commands/main.ts", "lint-thread": "src/commands/lint-thread.ts" },
    outdir: program,
    outExtension: { ".js": ".cjs" },
    chunkNames: "[name]-[hash]",
  });
  // esbuild splits modules only, so the pieces become CommonJS one by one.
  for (const name of pieces(program)) {
    const file = join(program, name);
    const { code } = await transform(readFileSync(file, "utf8"), {
      format: "cjs",
      platform: "node",
      target: "node20",
      minify: true,
      supported: { "dynamic-import": false },
      define: { "import.meta.url": "__filename" },
    });
    writeFileSync(file, code);
  }
}

/** Keeps compiled code beside every piece, from runs of the commands on the example farm. What they find does not matter. */
export function keepCompiled() {
  for (const args of runs)
    spawnSync(process.execPath, [join(root, "scripts/build/keep-compiled.cjs"), ...args], {
      cwd: root,
      stdio: "ignore",
    });
}

const farm = "cases-example/alder-farm";
const runs = [["lint", farm], ["score", farm], ["herd", farm], ["explain"]];

const pieces = (folder) => readdirSync(folder).filter((name) => name.endsWith(".cjs"));
