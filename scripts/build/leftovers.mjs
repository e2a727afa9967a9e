// What a build leaves when it is killed: the program half made beside its place, or the last one half taken away.
import { readdirSync, rmSync } from "node:fs";
import { join } from "node:path";

/** Takes away those of builds that have ended, and of an earlier process with the number of this one. */
export function clearLeftovers(folder) {
  for (const name of readdirSync(folder)) {
    const [, number] = /^dist\.(?:next|last)-(\d+)$/.exec(name) ?? [];
    if (number === undefined || (Number(number) !== process.pid && isRunning(Number(number)))) continue;
    rmSync(join(folder, name), { recursive: true, force: true });
  }
}

function isRunning(pid) {
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    // A process of somebody else may not be asked, but is there.
    return error.code === "EPERM";
  }
}
