// Speed and memory as ratios, beside their goals. What is set against each other is run in turn, so that a busy machine
// slows both alike; the medians of the ratios are what counts.
import { spawnSync } from "node:child_process";
import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { cpus, tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import "./setup.mjs";

const root = fileURLToPath(new URL("..", import.meta.url));
/** One run each of an archive of 1 040 cases and one of 99 996, and nothing else. */
const isLarge = process.argv.includes("--large");
const runs = Number(process.argv.slice(2).find((argument) => !argument.startsWith("--")) ?? 15);
const one = "tests/fixtures/birch-farm/2026-04-20/pig-01.yaml";
const carcase = (...args) => ["bin/carcase.js", ...args];

/** Runs Node to its end: seconds of wall time and, where asked, of CPU time, and MiB of memory at its peak. */
function run(args, isMeasured = true) {
  const usage = isMeasured ? ["--require", "./scripts/bench/usage.cjs"] : [];
  const start = process.hrtime.bigint();
  const { status, output } = spawnSync(process.execPath, [...usage, ...args], {
    cwd: root,
    stdio: ["ignore", "ignore", "ignore", "pipe"],
    encoding: "utf8",
  });
  const wall = Number(process.hrtime.bigint() - start) / 1e9;
  if (status !== 0) throw new Error(`node ${args.join(" ")} ended with ${status}`);
  return { wall, ...(isMeasured && JSON.parse(output[3])) };
}

const sorted = (values) => values.toSorted((a, b) => a - b);
const median = (values) => sorted(values)[Math.floor(values.length / 2)];

function line(name, text, goal) {
  console.log(`${name.padEnd(46)} ${text}${goal === undefined ? "" : `  (goal: at most ${goal})`}`);
}

/** What one command takes of another's time. */
function ratio(name, args, { to, of, by, goal, pairs = runs }) {
  const takes = (what) => run(what, by !== "wall")[by];
  takes(args);
  takes(to);
  const ratios = sorted(Array.from({ length: pairs }, () => takes(args) / takes(to)));
  const [least, most] = [ratios[0], ratios.at(-1)].map((value) => value.toFixed(2));
  line(name, `${median(ratios).toFixed(2).padStart(6)} x ${of}  [${least} to ${most}]`, goal);
}

/** The example farm under another name: no two pigs of an archive share an id, and nobody has sealed them. */
function copyFarm(folder, copy) {
  cpSync(join(root, "cases-example/alder-farm"), folder, { recursive: true });
  for (const name of readdirSync(folder, { recursive: true, encoding: "utf8" }).filter((file) =>
    file.endsWith(".yaml"),
  )) {
    const file = join(folder, name);
    const text = readFileSync(file, "utf8").replaceAll("alder-2", `alder-${copy}-2`);
    writeFileSync(file, text.replace(/^seals:\n(?: .*\n)*/m, ""));
  }
}

function archive(parent, farms) {
  const folder = join(parent, `${farms}-farms`);
  for (let copy = 0; copy < farms; copy++) copyFarm(join(folder, `farm-${copy}`), copy);
  cpSync(join(root, "cases-example/carcase.yaml"), join(folder, "carcase.yaml"));
  return folder;
}

if (isLarge) {
  measureLarge();
  process.exit();
}

/**
 * What each command takes of 99 996 cases beside 1 040: once each, since it takes a quarter of an hour and more.
 */
function measureLarge() {
  console.log(`node ${process.version}, ${cpus().length} cores; one run each`);
  const parent = mkdtempSync(join(tmpdir(), "carcase-bench-"));
  try {
    cpSync(join(root, "schemas"), join(parent, "schemas"), { recursive: true });
    process.env.XDG_CACHE_HOME = join(parent, "cache");
    const sizes = [40, 3846].map((farms) => ({ cases: farms * 26, folder: archive(parent, farms) }));
    for (const [name, ...args] of [
      ["lint, cold", "lint", "--quiet"],
      ["lint again", "lint", "--quiet"],
      ["lint --no-cache", "lint", "--quiet", "--no-cache"],
      ["score", "score"],
      ["herd", "herd"],
      ["export", "export", "--output", join(parent, "tables")],
    ]) {
      const [small, large] = sizes.map(({ cases, folder }) => {
        const took = run(carcase(...args, folder));
        return { ...took, each: took.cpu / cases };
      });
      line(
        `${name}, 99 996 cases`,
        `${large.wall.toFixed(0)} s, CPU ${large.cpu.toFixed(1)} s, ${large.memory.toFixed(0)} MiB`,
        "400 MiB",
      );
      line(`${name}, CPU a case`, `${(large.each / small.each).toFixed(2)} x that of 1 040 cases`, 1.2);
    }
    const least = run(["scripts/bench/hashes.mjs", sizes[1].folder]);
    line("reading and hashing them", `CPU ${least.cpu.toFixed(1)} s`);
  } finally {
    rmSync(parent, { recursive: true });
  }
}

console.log(
  `node ${process.version}, ${cpus().length} cores; medians [least to greatest] of ${runs} pairs of runs, of 5 for archives`,
);

if (process.argv.includes("--validators")) {
  const { compareValidators } = await import("./bench/validators.mjs");
  compareValidators({ archive, median, runs: Math.min(runs, 5) });
  process.exit();
}

const empty = { to: ["-e", "0"], of: "node -e 0", by: "wall" };
ratio("--version", carcase("--version"), { ...empty, goal: 1.2 });
ratio("lint, one case", carcase("lint", one), { ...empty, goal: 1.7 });
for (const command of ["lint", "score", "herd"])
  ratio(`${command}, example farm (26 cases)`, carcase(command, "cases-example/alder-farm"), empty);

const many = mkdtempSync(join(tmpdir(), "carcase-bench-"));
try {
  const pairs = 5;
  // The first line of each file names its schema; a line that leads nowhere is a finding.
  cpSync(join(root, "schemas"), join(many, "schemas"), { recursive: true });
  const [small, middle, large] = [40, 154, 385].map((farms) => archive(many, farms));
  process.env.XDG_CACHE_HOME = join(many, "cache");
  const lint = (folder, ...more) => carcase("lint", "--quiet", "--no-cache", ...more, folder);
  for (const [cases, folder] of [
    ["1 040", small],
    ["10 010", large],
  ])
    ratio(`lint, ${cases} cases, CPU`, lint(folder), {
      to: ["scripts/bench/events.mjs", folder],
      of: "one parseEvents of the same files",
      by: "cpu",
      goal: 3,
      pairs,
    });
  // The first run, which is not measured, keeps what the others use.
  ratio("lint again, 10 010 cases, CPU", carcase("lint", "--quiet", large), {
    to: ["scripts/bench/hashes.mjs", large],
    of: "reading and hashing the same files",
    by: "cpu",
    goal: 2,
    pairs,
  });
  ratio("lint, 10 010 cases, two threads, wall", lint(large, "--threads", "2"), {
    to: lint(large),
    of: "one thread",
    by: "wall",
    goal: 0.65,
    pairs,
  });
  for (const command of ["score", "herd"])
    ratio(`${command}, 10 010 cases, CPU`, carcase(command, large), {
      to: lint(large),
      of: "lint",
      by: "cpu",
      goal: 1.5,
      pairs: 3,
    });
  const report = archive(many, 12);
  ratio("report, 312 cases, CPU", carcase("report", "--for", "colleague", report), {
    to: lint(report),
    of: "lint",
    by: "cpu",
    goal: 5,
    pairs,
  });
  const memory = (folder) => median(Array.from({ length: 3 }, () => run(lint(folder)).memory));
  const [atMiddle, atLarge] = [memory(middle), memory(large)];
  line("lint, 4 004 cases, memory", `${atMiddle.toFixed(0).padStart(6)} MiB`);
  line(
    "lint, 10 010 cases, memory",
    `${atLarge.toFixed(0).padStart(6)} MiB`,
    "220 MiB, and flat from 4 004 on",
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
const ratios = sorted(
  Array.from({ length: 6 }, () => [
    clock((x, n) => binomialInterval(x, n)),
    clock((x, n) => jstat.jStat.beta.inv(0.025, x + 1, n - x + 1)),
  ])
    .slice(1)
    .map(([ours, theirs]) => ours / theirs),
);
line(
  "100 000 Clopper-Pearson intervals",
  `${median(ratios).toFixed(2).padStart(6)} x 100 000 beta quantiles of jstat  [${ratios[0].toFixed(2)} to ${ratios.at(-1).toFixed(2)}]`,
  10,
);
