// npm run simulate [-- --seed 1 --runs 500]: how often what the commands print is right, through their own functions.
// Writes scripts/simulate/results.json and the table of docs/statistics.md. Takes some 40 minutes; --only twoShares makes
// one part again, with the seed and the runs of the others.
import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { parseArgs } from "node:util";
import { agree } from "./simulate/agree.mjs";
import { compare } from "./simulate/compare.mjs";
import { draws } from "./simulate/draws.mjs";
import { herd } from "./simulate/herd.mjs";
import { makePool } from "./simulate/pool.mjs";
import { pageWith } from "./simulate/table.mjs";

const root = fileURLToPath(new URL("..", import.meta.url));
const file = join(root, "scripts/simulate/results.json");
const page = join(root, "docs/statistics.md");
const parts = { ...herd, ...compare, ...agree };
const { values } = parseArgs({
  options: {
    seed: { type: "string", default: "1" },
    runs: { type: "string", default: "500" },
    only: { type: "string" },
  },
});
const before = values.only === undefined ? null : JSON.parse(readFileSync(file, "utf8"));
const [seed, runs] = before === null ? [values.seed, values.runs].map(Number) : [before.seed, before.runs];
const wanted = values.only === undefined ? Object.keys(parts) : values.only.split(",");
if (
  !Number.isInteger(seed) ||
  !Number.isInteger(runs) ||
  runs < 20 ||
  wanted.some((name) => !Object.hasOwn(parts, name))
) {
  console.error(`usage: npm run simulate -- --seed 1 --runs 500, or --only ${Object.keys(parts).join(",")}`);
  process.exit(2);
}

/** A seed for each part, so that no part depends on what ran before it. */
const seedOf = (name) =>
  [...name].reduce((sum, letter) => (sum * 31 + letter.charCodeAt(0)) % 1_000_000_007, seed);

if (!existsSync(join(root, "dist/index.js"))) await import("./setup.mjs");
const lib = await import("../dist/index.js");
const s = await import("../dist/statistics.js");
const poolWith = (choice) => makePool(lib.readCases, choice);
const pool = poolWith();
const rows = [];
for (const [name, part] of Object.entries(parts)) {
  const made = wanted.includes(name)
    ? [...part({ lib, s, pool, poolWith, runs, random: draws(s, seedOf(name)) })].map((row) => ({
        part: name,
        ...row,
      }))
    : before.rows.filter((row) => row.part === name);
  rows.push(...made);
  if (wanted.includes(name))
    for (const { printed, design, worst, worst_at, mean } of made)
      console.log(`${printed}, ${design}: worst ${worst} at ${worst_at}, mean ${mean}`);
}
const results = { seed, runs, rows };
writeFileSync(file, `${JSON.stringify(results, null, 2)}\n`);
writeFileSync(page, pageWith(readFileSync(page, "utf8"), results));
