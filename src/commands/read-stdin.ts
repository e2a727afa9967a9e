/** Standard input as bytes. */
import { readSync } from "node:fs";

/** How long to wait for a writer that has nothing ready, in milliseconds. */
const pause = 5;

/** Reads to the end. A pipe that answers "not now" is asked again: the writer is only slower than we are. */
export function readStandardInput(): Uint8Array {
  const chunks: Uint8Array[] = [];
  const chunk = Buffer.alloc(1 << 16);
  for (;;) {
    try {
      const length = readSync(0, chunk);
      if (length === 0) return Buffer.concat(chunks);
      chunks.push(Buffer.from(chunk.subarray(0, length)));
    } catch (error) {
      const code = (error as NodeJS.ErrnoException).code;
      if (code === "EOF") return Buffer.concat(chunks);
      if (code !== "EAGAIN") throw error;
      Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, pause);
    }
  }
}
