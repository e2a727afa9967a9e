/** `{weight: 17,5 kg}` is two keys to YAML and one weight to whoever wrote it. */
import type { MapEntry } from "./source-tree.ts";

/**
 * Puts values back together that a decimal comma inside braces has torn apart, so that they are refused as one wrong
 * value instead of being read as another number.
 */
export function joinDecimalCommas(entries: MapEntry[], text: string): void {
  for (let i = entries.length - 1; i > 0; i--) {
    const { key, value: none } = entries[i] ?? {};
    const { key: keyBefore, value } = entries[i - 1] ?? {};
    if (key?.kind !== "scalar" || value?.kind !== "scalar") continue;
    if (none !== undefined && none.start !== none.end) continue;
    const written = text.slice(value.start, key.end);
    if (!/^-?\d+,\d+(?:\s+[^\s,:]+|[^\d\s,:][^\s,:]*)?$/.test(written)) continue;
    // The node stays the same one, because a reference may lead to it.
    const joined = Object.assign(value, { value: written, end: key.end });
    entries.splice(i - 1, 2, { key: keyBefore, value: joined });
  }
}
