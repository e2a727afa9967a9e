/** What a sample may come from: the schema has a pattern for it, not a list. */
import { organs, sampleRules, systems } from "../knowledge/index.ts";

const names: readonly string[] = [
  ...organs.map(({ id }) => id),
  ...systems.map(({ id }) => id),
  ...Object.keys(sampleRules.materials),
];

/** Names of organs and materials, where the patterns of a place ask for one of them. */
export const sampleNames = (patterns: readonly string[]): readonly string[] =>
  patterns.some(isOfOrgans) ? names : [];

/** A pattern of `system.organ`, and not one of any id. */
function isOfOrgans(pattern: string): boolean {
  const form = new RegExp(pattern, "u");
  return form.test("oral_fluid") && form.test("respiratory.lungs") && !form.test("A-1");
}
