import type { Fault } from "../cases/index.ts";

/** Files without which there is no result. */
export class Unusable extends Error {
  constructor(readonly faults: readonly Fault[]) {
    super(faults.map(({ file, message }) => `${file}: ${message}`).join("\n"));
  }
}
