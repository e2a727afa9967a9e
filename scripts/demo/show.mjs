// Five questions to the example farm, asked as a user would. What is printed fits a screen or two (a test holds that), so
// that the commands are those that answer in few lines.
import { spawnSync } from "node:child_process";
import { fileURLToPath } from "node:url";

const cwd = fileURLToPath(new URL("../../cases-example", import.meta.url));
const program = fileURLToPath(new URL("../../bin/carcase.js", import.meta.url));
// As wide as the terminal, but no wider than is read with ease.
const env = { ...process.env, COLUMNS: String(Math.min(80, process.stdout.columns ?? 80)) };

/** Prints a question and a command line, and runs that; ends the demo unless the exit code is the one announced. */
function show(question, line, expected = 0) {
  console.log(`\n# ${question}\n$ carcase ${line}`);
  const { status } = spawnSync(process.execPath, [program, ...line.split(" ")], {
    cwd,
    env,
    stdio: "inherit",
  });
  if (status === expected) return;
  console.error(`carcase ${line} ended with ${status}, expected ${expected}`);
  process.exit(1);
}

console.log("$ cd cases-example");
show("Was an organ forgotten?", "lint incomplete/skipped-organ.yaml", 1);
show("How bad is it in one pig?", "score --scale maff-1978,goodwin-1971 alder-farm/2026-03-14/pig-02.yaml");
show("How common is it in the herd?", "herd --plot --by visit --indicator snout-grade-2-up alder-farm");
show(
  "Did it change? (-q: the answer alone, without its reasons and sources)",
  "compare -q --indicator snout-grade-2-up alder-farm",
);
show("What does it fit best?", "workup -q --first 1 alder-farm/2026-03-14/pig-09.yaml");
console.log(`
# Where to look next
  npm run install:global      puts carcase on the path (docs/install.md)
  docs/guide.md               your own first visit, step by step
  cases-example/alder-farm    the farm that was shown, one file a pig
  carcase explain             rules, scales, organs and words, and who says so
  carcase --help              all commands`);
