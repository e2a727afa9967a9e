/** The fingerprint of a file. */
import type * as Crypto from "node:crypto";
import { createRequire } from "node:module";

/** SHA-256 of bytes, as 64 small hexadecimal digits. The library is loaded only when it is asked. */
export function sha256(bytes: Uint8Array): string {
  const { createHash } = createRequire(import.meta.url)("node:crypto") as typeof Crypto;
  return createHash("sha256").update(bytes).digest("hex");
}
