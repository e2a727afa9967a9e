/** Blank keys: a key without a value is an omission, wherever it stands. */

/**
 * The same without keys that have no value; what holds no blank stays the same object.
 * @param but a key that may be null
 */
export function withoutBlanks<Value>(value: Value, but?: string): Value;
export function withoutBlanks(value: unknown, but?: string): unknown {
  if (typeof value !== "object" || value === null) return value;
  if (Array.isArray(value)) {
    const kept = value.map((item) => withoutBlanks(item, but));
    return kept.every((item, index) => item === value[index]) ? value : kept;
  }
  const from = value as Record<string, unknown>;
  let kept: Record<string, unknown> | undefined;
  for (const key of Object.keys(from)) {
    const item = from[key];
    const inside = withoutBlanks(item, but);
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
  for (const key of Object.keys(from)) {
    if (key === last) break;
    copy[key] = from[key];
  }
  return copy;
}
