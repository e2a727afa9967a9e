/** Whether what was sampled, in free words, is where toxigenic Pasteurella multocida is looked for. */
import { sampleRules } from "../knowledge/index.ts";
import { affirmed } from "../notes/index.ts";

/**
 * @param from what was sampled, as it is written
 * @returns true for nose, concha, tonsil or what grew from them, false for other material, undefined for words that nobody knows
 */
export function isToxinMaterial(from: string): boolean | undefined {
  const { materials, other_materials: others } = sampleRules.toxin_gene;
  if (affirmed(from, materials).length > 0) return true;
  return affirmed(from, others).length > 0 ? false : undefined;
}
