/**
 * The built program in a process that stays: a call costs the command and not the start of Node, so that many hundred fit into
 * the tests. Who looks at the process itself (streams to files, variables, signals) starts one of its own.
 */
import { MessageChannel, receiveMessageOnPort, Worker } from "node:worker_threads";
import type { Job } from "../hostile/program.ts";
import type { Ran } from "./run.ts";

const signal = new Int32Array(new SharedArrayBuffer(4));
const { port1: here, port2: there } = new MessageChannel();
let isStarted = false;

/** @returns undefined when the process ended instead of answering */
export function warm(job: Job): Ran | undefined {
  if (!isStarted) start();
  Atomics.store(signal, 0, 0);
  here.postMessage(job);
  Atomics.wait(signal, 0, 0);
  const { code, out, err } = receiveMessageOnPort(here)?.message ?? {};
  return code === undefined ? undefined : { code, out, err };
}

function start(): void {
  new Worker(new URL("warm-worker.mjs", import.meta.url), {
    workerData: { signal, there },
    transferList: [there],
  }).unref();
  isStarted = true;
}
