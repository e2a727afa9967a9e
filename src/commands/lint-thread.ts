/** A thread of `carcase lint`: lints its share of the folders and sends back what it found. */
import { parentPort, workerData } from "node:worker_threads";
import { type LintJob, lintShare, type Share } from "./lint-folders.ts";

const { job, share } = workerData as { readonly job: LintJob; readonly share: Share };
void lintShare(job, share).then((linted) => parentPort?.postMessage(linted));
