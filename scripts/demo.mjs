// The example farm through the whole program. Sets up everything it needs, then calls the commands as a user would.
import { spawnSync } from "node:child_process";
import { fileURLToPath } from "node:url";
import "./setup.mjs";

const root = fileURLToPath(new URL("..", import.meta.url));

/** Runs one command and prints it first; ends the demo unless the exit code is the one announced. */
function show(title, args, expected = 0) {
  console.log(`\n━━ ${title}\n$ carcase ${args.join(" ")}\n`);
  const { status } = spawnSync(process.execPath, ["bin/carcase.js", ...args], {
    cwd: root,
    stdio: "inherit",
  });
  if (status === expected) return;
  console.error(`carcase ${args.join(" ")} ended with ${status}, expected ${expected}`);
  process.exit(1);
}

show("Is anything missing from two visits?", ["lint", "cases-example/alder-farm"]);
show(
  "What an incomplete record looks like (exit code 1 is right here)",
  ["lint", "cases-example/incomplete/skipped-organ.yaml"],
  1,
);
show("Every pig on every scale", ["score", "cases-example/alder-farm"]);
show("How common, how bad, how sure", ["herd", "--by", "visit,group", "cases-example/alder-farm"]);
