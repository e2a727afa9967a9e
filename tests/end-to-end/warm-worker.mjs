// Waits for the built program, while the tests wait for this thread: they ask in the middle of a function and cannot wait for
// an event.
import { fork } from "node:child_process";
import { fileURLToPath } from "node:url";
import { workerData } from "node:worker_threads";

const { signal, there } = workerData;
const runner = fileURLToPath(new URL("../hostile/runner.cjs", import.meta.url));
let child;

function answer(done) {
  there.postMessage(done);
  Atomics.store(signal, 0, 1);
  Atomics.notify(signal, 0);
}

function started() {
  const { NO_COLOR: _no, FORCE_COLOR: _force, COLUMNS: _width, ...plain } = process.env;
  const made = fork(runner, ["plain"], {
    stdio: ["ignore", "ignore", "ignore", "ipc"],
    serialization: "advanced",
    env: plain,
  });
  made.on("message", answer);
  made.on("exit", () => {
    child = undefined;
    answer({});
  });
  return made;
}

there.on("message", (job) => {
  child ??= started();
  child.send(job);
});
