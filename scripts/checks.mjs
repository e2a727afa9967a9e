// What npm test asks before the tests: each of these scripts, all at the same time; what one says comes when it ends.
import { spawn } from "node:child_process";
import { fileURLToPath } from "node:url";

const ended = await Promise.all(
  ["check", "hygiene"].map(
    (name) =>
      new Promise((done) => {
        let said = "";
        const child = spawn("npm", ["run", "--silent", name], {
          cwd: fileURLToPath(new URL("..", import.meta.url)),
          stdio: ["ignore", "pipe", "pipe"],
          shell: process.platform === "win32",
        });
        for (const stream of [child.stdout, child.stderr]) stream.on("data", (some) => (said += some));
        child.on("close", (code) => {
          process.stdout.write(said);
          done(code === 0);
        });
      }),
  ),
);
if (ended.includes(false)) process.exitCode = 1;
