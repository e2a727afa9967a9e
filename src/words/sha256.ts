/** The fingerprint of bytes or of a text. */
import type * as Crypto from "node:crypto";
import { createRequire } from "node:module";

let library: typeof Crypto | undefined;

/** SHA-256, as 64 small hexadecimal digits. The library is loaded only when it is asked. */
export function sha256(bytes: Uint8Array | string): string {
  library ??= createRequire(import.meta.url)("node:crypto") as typeof Crypto;
  return library.hash("sha256", bytes);
}
