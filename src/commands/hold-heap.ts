/** Keeps the heap small where an archive is read and let go folder by folder. */
import { createRequire } from "node:module";
import type * as V8 from "node:v8";

/** A module of Node that takes time to load and that a few files do not need. */
const ofNode = createRequire(import.meta.url);

/** From so many files on the heap is held down. */
const manyFiles = 300;
/** Below so many, V8 compiles more functions than the rest of the run pays back. */
const compilingPays = 3000;

/**
 * An archive is read and let go folder by folder: without these V8 lets the heap grow with it, and collects young objects
 * in too small a space (docs/performance.md).
 */
export function holdHeapDown(folders: readonly { readonly files: readonly unknown[] }[]): void {
  const files = folders.reduce((sum, folder) => sum + folder.files.length, 0);
  if (files <= manyFiles) return;
  const { setFlagsFromString } = ofNode("node:v8") as typeof V8;
  setFlagsFromString("--heap-growing-percent=20");
  setFlagsFromString("--semi-space-growth-factor=4");
  if (files < compilingPays) setFlagsFromString("--interrupt-budget=400000");
}
