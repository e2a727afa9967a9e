/** Blank keys: a key without a value is an omission, wherever it stands. */

/** A copy in which keys without a value are left out: blank is an omission, everywhere. */
export function withoutBlanks(value: Record<string, unknown>): Record<string, unknown>;
export function withoutBlanks(value: unknown): unknown;
export function withoutBlanks(value: unknown): unknown {
  if (Array.isArray(value)) return value.map((item) => withoutBlanks(item));
  if (typeof value !== "object" || value === null) return value;
  const kept = Object.entries(value).filter(([, item]) => item !== null);
  return Object.fromEntries(kept.map(([key, item]) => [key, withoutBlanks(item)]));
}
