/** Values as they stand in messages. */

/** Longer texts are cut. */
export const longText = 60;

/** A value as it was written, cut to one short line. */
export function shown(value: unknown): string {
  if (value === undefined || value === null) return "a blank value";
  if (Array.isArray(value)) return "a list";
  if (typeof value === "object") return "a group of keys";
  const text = JSON.stringify(value);
  return text.length > longText ? `${text.slice(0, longText - 3)}…"` : text;
}
