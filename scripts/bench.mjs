// Start-up and linting as ratios to an empty Node process, measured in turn so that a busy machine slows both alike.
import { spawnSync } from "node:child_process";
import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import "./setup.mjs";

const root = fileURLToPath(new URL("..", import.meta.url));
const runs = Number(process.argv[2] ?? 15);
const one = "tests/fixtures/birch-farm/2026-04-20/pig-01.yaml";

const seconds = (args) => {
  const start = process.hrtime.bigint();
  const { status } = spawnSync(process.execPath, args, { cwd: root, stdio: "ignore" });
  if (status !== 0) throw new Error(`node ${args.join(" ")} ended with ${status}`);
  return Number(process.hrtime.bigint() - start) / 1e9;
};
const median = (values) => values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)];

/** Ratio of a command to `node -e 0`, pair by pair. */
function ratio(name, args, limit) {
  seconds(["-e", "0"]);
  seconds(args);
  const pairs = Array.from({ length: runs }, () => [seconds(["-e", "0"]), seconds(args)]);
  const ratios = pairs.map(([empty, ours]) => ours / empty);
  const shown = median(ratios).toFixed(2);
  const bound = limit === undefined ? "" : `  (goal: at most ${limit})`;
  console.log(
    `${name.padEnd(34)} ${shown.padStart(6)} x node -e 0  [${Math.min(...ratios).toFixed(2)} to ${Math.max(...ratios).toFixed(2)}]${bound}`,
  );
}

console.log(`node ${process.version}, ${runs} pairs of runs each, median [least to greatest]`);
ratio("--version", ["bin/carcase.js", "--version"], 1.6);
ratio("--help", ["bin/carcase.js", "--help"]);
ratio("lint, one case", ["bin/carcase.js", "lint", one], 2.5);
ratio("lint, example farm (26 cases)", ["bin/carcase.js", "lint", "cases-example/alder-farm"]);
ratio("score, example farm", ["bin/carcase.js", "score", "cases-example/alder-farm"]);
ratio("herd, example farm", ["bin/carcase.js", "herd", "cases-example/alder-farm"]);

/** The example farm under another name: no two pigs of an archive share an id. */
function copyFarm(folder, copy) {
  cpSync(join(root, "cases-example/alder-farm"), folder, { recursive: true });
  for (const name of readdirSync(folder, { recursive: true, encoding: "utf8" }).filter((one) =>
    one.endsWith(".yaml"),
  )) {
    const file = join(folder, name);
    writeFileSync(file, readFileSync(file, "utf8").replaceAll("alder-2", `alder-${copy}-2`));
  }
}

// Many visits: what one more case costs.
const many = mkdtempSync(join(tmpdir(), "carcase-bench-"));
try {
  for (let copy = 0; copy < 20; copy++) copyFarm(join(many, `farm-${copy}`), copy);
  cpSync(join(root, "cases-example/carcase.yaml"), join(many, "carcase.yaml"));
  const start = seconds(["bin/carcase.js", "lint", one]);
  const all = seconds(["bin/carcase.js", "lint", "--format", "json", many]);
  console.log(
    `${"lint, 520 cases".padEnd(34)} ${(((all - start) / 519) * 1000).toFixed(1).padStart(6)} ms for each further case`,
  );
} finally {
  rmSync(many, { recursive: true });
}

// Exact intervals: two limits each, against single beta quantiles of jstat in the same process, taken in turn.
const { default: jstat } = await import("jstat");
const { binomialInterval } = await import("../dist/statistics.js");
const counts = Array.from({ length: 100_000 }, (_, i) => {
  const n = 5 + ((i * 37) % 296);
  return [(i * 61) % (n + 1), n];
});
const clock = (each) => {
  const start = process.hrtime.bigint();
  for (const [x, n] of counts) each(x, n);
  return Number(process.hrtime.bigint() - start) / 1e9;
};
const pairs = Array.from({ length: 6 }, () => [
  clock((x, n) => binomialInterval(x, n)),
  clock((x, n) => jstat.jStat.beta.inv(0.025, x + 1, n - x + 1)),
]).slice(1);
const ratios = pairs.map(([ours, theirs]) => ours / theirs);
console.log(
  `${"100 000 Clopper-Pearson intervals".padEnd(34)} ${median(ratios).toFixed(2).padStart(6)} x 100 000 beta quantiles of jstat  [${Math.min(...ratios).toFixed(2)} to ${Math.max(...ratios).toFixed(2)}]  (goal: under 10)`,
);
