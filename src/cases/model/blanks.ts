/** Blank keys: a key without a value is an omission, wherever it stands. */

/**
 * The same without keys that have no value; what holds no blank stays the same object.
 * @param but a key that may be null
 */
export function withoutBlanks<Value>(value: Value, but?: string): Value;
export function withoutBlanks(value: unknown, but?: string): unknown {
  if (typeof value !== "object" || value === null) return value;
  if (Array.isArray(value)) return withoutBlanksIn(value, but);
  const from = value as Record<string, unknown>;
  let kept: Record<string, unknown> | undefined;
  for (const key in from) {
    const item = from[key];
    const inside = typeof item === "object" ? withoutBlanks(item, but) : item;
    const isBlank = item === null && key !== but;
    if (kept === undefined && !isBlank && inside === item) continue;
    // From the first difference on there is a copy.
    kept ??= before(from, key);
    if (!isBlank) kept[key] = inside;
  }
  return kept ?? value;
}

/** The keys that stand before another one. */
function before(from: Record<string, unknown>, last: string): Record<string, unknown> {
  const copy: Record<string, unknown> = {};
  for (const key in from) {
    if (key === last) break;
    copy[key] = from[key];
  }
  return copy;
}

function withoutBlanksIn(list: readonly unknown[], but: string | undefined): readonly unknown[] {
  let kept: unknown[] | undefined;
  for (let at = 0; at < list.length; at++) {
    const item = list[at];
    const inside = typeof item === "object" ? withoutBlanks(item, but) : item;
    if (kept === undefined && inside !== item) kept = list.slice(0, at);
    kept?.push(inside);
  }
  return kept ?? list;
}
