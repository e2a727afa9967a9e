/** An archive of format 1, what it is in a format 2 that does not exist, and the program that makes the one of the other. */
import { mkdtempSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { build } from "esbuild";
import { smallCase } from "../cases/temporary.ts";
import { root, wide } from "../end-to-end/run.ts";

// It goes with the temporary folder of the whole run.
export const program = join(mkdtempSync(join(tmpdir(), "carcase-migrate-")), "migrate.mjs");
export const env = { NODE_PATH: join(root, "node_modules"), ...wide };

export const buildProgram = () =>
  build({
    entryPoints: [join(root, "tests/migrate/driver.ts")],
    outfile: program,
    bundle: true,
    platform: "node",
    format: "esm",
    logLevel: "error",
    banner: {
      js: 'import { createRequire as makeRequire } from "node:module"; const require = makeRequire(import.meta.url);',
    },
  });

export const old: Readonly<Record<string, string>> = {
  "carcase.yaml": "format: 1\nlevel: 0.9\nscales: [scales/ours.yaml]\n",
  "scales/ours.yaml": "format: 1\norgan: respiratory.lungs\nparts: []\n",
  "farm.yaml": "format: 1\nfarm: x\n",
  "a/visit.yaml": "format: 1\nvisit: a\ndate: 2026-03-14\ncomplaint: cough # at night\n",
  "a/results.yaml": "format: 1\nresults: a\nentries: []\n",
  "a/pig-01.yaml": smallCase("a-01", "pig: {tag: '7', sex: castrate} # red\n"),
  "a/pig-02.yaml": smallCase("a-02", "history: ill\n"),
  "other.yaml": "services: {web: {image: x}}\n",
  "notes.txt": "format: 1\n",
};
export const young: typeof old = {
  ...Object.fromEntries(
    Object.entries(old).map(([name, text]) => [
      name,
      name.endsWith(".yaml") ? text.replace("format: 1", "format: 2") : text,
    ]),
  ),
  "a/visit.yaml": "format: 2\nvisit: a\ndate: 2026-03-14\ntold: cough # at night\n",
  "a/pig-01.yaml": "format: 2\ncase: a-01\npig: {mark: '7', sex: neutered male} # red\n",
  "a/pig-02.yaml": "format: 2\ncase: a-02\n",
};
