/** Keeps the heap small where an archive is read and let go folder by folder. */
import { createRequire } from "node:module";
import type * as V8 from "node:v8";
import type * as Vm from "node:vm";

/** A module of Node that takes time to load and that a few files do not need. */
const ofNode = createRequire(import.meta.url);

/** From so many files on the heap is held down. */
const manyFiles = 300;
/** From so many on, finding them leaves more behind than reading them needs. */
const mostFiles = 20_000;
/** Below so many, V8 compiles more functions than the rest of the run pays back. */
const compilingPays = 3000;

const setFlag = (flag: string): void => (ofNode("node:v8") as typeof V8).setFlagsFromString(flag);

/**
 * An archive is read and let go folder by folder: without these V8 lets the heap grow with it, and collects young objects
 * in too small a space (docs/performance.md).
 */
export function holdHeapDown(files: number): void {
  if (files <= manyFiles) return;
  setFlag("--heap-growing-percent=20");
  setFlag("--semi-space-growth-factor=4");
  // How far the heap may grow was decided when it was last collected: while so many were found, if not before.
  if (files > mostFiles) collect();
}

function collect(): void {
  setFlag("--expose-gc");
  (ofNode("node:vm") as typeof Vm).runInNewContext("gc()");
}

export function compileLater(files: number): void {
  if (files > manyFiles && files < compilingPays) setFlag("--interrupt-budget=400000");
}

/** Where next to all is known already, few functions are run often enough to be worth compiling. */
export function compileLittle(files: number): void {
  if (files > manyFiles) setFlag("--interrupt-budget=1000000");
}

/** As V8 does by itself, after `compileLittle`. */
export function compileAsUsual(files: number): void {
  if (files >= compilingPays) setFlag("--interrupt-budget=135168");
}

export const filesIn = (folders: readonly { readonly files: readonly unknown[] }[]): number =>
  folders.reduce((sum, folder) => sum + folder.files.length, 0);
