// Bundles src into dist: the program and the library share chunks, so that nothing heavy is read before it is needed.
import { execFileSync } from "node:child_process";
import { cpSync, existsSync, readFileSync, renameSync, rmSync } from "node:fs";
import { join } from "node:path";
import { build } from "esbuild";
import { writeCompletion } from "./build/completion.mjs";
import { keepReached } from "./build/declarations.mjs";
import { clearLeftovers } from "./build/leftovers.mjs";
import { notesPackages, writeLicences } from "./build/licences.mjs";
import { lightNode } from "./build/light-node.mjs";
import { making, sourcesOf } from "./build/made.mjs";
import { writeManual } from "./build/manual.mjs";
import { writeOutputSchemas } from "./build/output-schemas.mjs";
import { buildProgram, keepCompiled } from "./build/program.mjs";
import { withoutRuleTexts, writeRuleTexts } from "./build/rule-texts.mjs";
import { loadTyped } from "./build/typed.mjs";
import { root } from "./generate/read.mjs";

const made = making("build");
const { version } = JSON.parse(readFileSync(join(root, "package.json"), "utf8"));

// Built beside its place and then moved, so that there is always a whole program to run.
// Two builds at once do not meet.
const next = join(root, `dist.next-${process.pid}`);
clearLeftovers(root);
const settings = {
  absWorkingDir: root,
  bundle: true,
  splitting: true,
  format: "esm",
  platform: "node",
  target: "node20",
  minify: true,
  legalComments: "none",
  define: { __VERSION__: JSON.stringify(version), __SOURCES__: JSON.stringify(sourcesOf("build")) },
  // Commander would load what starts other programs; carcase starts git alone, and loads that when it is asked to.
  alias: {
    "node:child_process": join(root, "scripts/build/no-child-process.mjs"),
    // Of its two builds this one reads events two and a half times faster (docs/performance.md).
    "js-yaml": join(root, "node_modules/js-yaml/dist/js-yaml.cjs.js"),
    // The build for browsers knows no files, so that no template can ask for one.
    liquidjs: join(root, "node_modules/liquidjs/dist/liquid.browser.mjs"),
  },
  // Brings code for one machine; photographs are linked where it is not installed.
  external: ["sharp"],
  plugins: [withoutRuleTexts, lightNode, notesPackages],
  logLevel: "warning",
};
await buildProgram(next, settings);
await build({
  ...settings,
  entryPoints: { index: "src/index.ts", statistics: "src/statistics/index.ts" },
  outdir: next,
  chunkNames: "chunks/[name]-[hash]",
  // Packages that are CommonJS ask for Node's own modules by `require`.
  banner: {
    js: 'import { createRequire as nodeRequire } from "node:module";const require = nodeRequire(import.meta.url);',
  },
});
const typed = await loadTyped(next, settings);
writeCompletion(next, typed);
writeManual(next, typed, version);
await writeRuleTexts(next);
writeLicences(next);
writeOutputSchemas();

// Read only for files that do not fit their schema.
cpSync(join(root, "src/generated"), join(next, "generated"), {
  recursive: true,
  filter: (path) => !/\.[jt]s$|[\\/]knowledge$/.test(path),
});

// Declarations of the public interface. Schema errors come typed from ajv, which users need not have.
execFileSync(
  process.execPath,
  [
    join(root, "node_modules/typescript/bin/tsc"),
    "--project",
    join(root, "tsconfig.build.json"),
    "--outDir",
    join(next, "types"),
  ],
  { stdio: "inherit", cwd: root },
);
keepReached(join(next, "types"), ["index.d.ts", "statistics/index.d.ts"]);
const last = join(root, `dist.last-${process.pid}`);
if (existsSync(join(root, "dist"))) renameSync(join(root, "dist"), last);
renameSync(next, join(root, "dist"));
rmSync(last, { recursive: true, force: true });
keepCompiled();
made();
