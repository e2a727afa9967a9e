/** Takes things out of a case and lints what is left, in the place of the file it came from. */
import { dirname, join } from "node:path";
import { readCases } from "../../src/cases/index.ts";
import { type Finding, lintCases } from "../../src/lint/index.ts";
import type { Omission } from "./omissions.ts";

export const ways = ["key taken out", "key left blank"] as const;
export type Way = (typeof ways)[number];

/** The case without what the omission names, as JSON, which is YAML too. */
export function mutate(record: unknown, omission: Omission, way: Way): string {
  const copy = structuredClone(record);
  for (const path of omission.paths) {
    const last = path.at(-1);
    const parent = path
      .slice(0, -1)
      .reduce<unknown>((at, step) => (at as Record<string | number, unknown>)[step], copy);
    if (last === undefined) continue;
    if (way === "key taken out") delete (parent as Record<string | number, unknown>)[last];
    else (parent as Record<string | number, unknown>)[last] = null;
  }
  return JSON.stringify(copy, null, 1);
}

/** Lints a text as if it lay beside a file. */
export function lintBeside(text: string, file: string): readonly Finding[] {
  const name = join(dirname(file), "mutant.yaml");
  return lintCases(readCases(["-"], { input: { bytes: new TextEncoder().encode(text), name } })).findings;
}

/** An error that names what is missing, by its own place or in its words. */
export const names = (findings: readonly Finding[], omission: Omission): boolean =>
  findings.some(
    (finding) =>
      finding.level === "error" &&
      omission.names.some((name) => finding.path === name || finding.message.includes(name)),
  );
