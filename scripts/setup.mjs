// Everything that tests and demo need, on a fresh clone: packages, generated code, built program. What is there and follows
// from its sources is not made again.
// Uses nothing but Node itself, because nothing else may be there yet.
import { execFileSync } from "node:child_process";
import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { isMade } from "./build/made.mjs";

const root = fileURLToPath(new URL("..", import.meta.url));
const run = (command, ...args) =>
  execFileSync(command, args, {
    cwd: root,
    stdio: ["ignore", process.stderr, process.stderr],
    shell: process.platform === "win32",
  });

/** Whether the packages of the lock file are installed. */
function installed() {
  const lock = join(root, "package-lock.json");
  const copy = join(root, "node_modules/.package-lock.json");
  if (!existsSync(copy)) return false;
  const versions = (file) =>
    Object.entries(JSON.parse(readFileSync(file, "utf8")).packages)
      .filter(([name, entry]) => name !== "" && entry.optional !== true)
      .map(([name, entry]) => `${name}@${entry.version}`)
      .sort()
      .join("\n");
  return versions(lock) === versions(copy);
}

// What npm was told about the command that led here is not meant for this one; no package needs a script of its own.
if (!installed())
  run("npm", "ci", "--no-audit", "--no-fund", "--ignore-scripts", "--global=false", "--dry-run=false");
for (const stage of ["generate", "build"]) {
  if (isMade(stage)) continue;
  if (stage === "build") console.error("Building the program; the next time only if something has changed.");
  run(process.execPath, `scripts/${stage}.mjs`);
}
