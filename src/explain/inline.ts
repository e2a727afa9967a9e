/** A value as somebody would type it in one line of YAML. */
export function inline(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(inline).join(", ")}]`;
  if (typeof value === "object" && value !== null)
    return `{${Object.entries(value)
      .map(([key, inner]) => `${key}: ${inline(inner)}`)
      .join(", ")}}`;
  return value === null ? "" : String(value);
}
