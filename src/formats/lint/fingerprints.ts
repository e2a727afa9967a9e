/** Names of findings that outlive an edit of the file: known by file, rule and path, never by line. */
import { createRequire } from "node:module";
import type { Finding } from "../../lint/index.ts";
import { portablePath } from "../page/portable-path.ts";

/**
 * One name for each finding, in the same order. It stays when lines are put in above; findings of one rule at one
 * path are told apart by their order.
 */
export function fingerprints(findings: readonly Finding[]): string[] {
  // Loaded only here: most runs need no fingerprint.
  const { createHash } = createRequire(import.meta.url)("node:crypto") as typeof import("node:crypto");
  const met = new Map<string, number>();
  return findings.map(({ rule, file, path }) => {
    const identity = JSON.stringify([rule, portablePath(file), path]);
    const before = met.get(identity) ?? 0;
    met.set(identity, before + 1);
    return createHash("sha256")
      .update(JSON.stringify([identity, before]))
      .digest("hex")
      .slice(0, 32);
  });
}
