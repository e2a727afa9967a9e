/** YAML as a person would write it in a line. */
export function flow(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(flow).join(", ")}]`;
  if (typeof value !== "object" || value === null)
    return typeof value === "string" && !/^[\w/.-]+$/.test(value) ? JSON.stringify(value) : String(value);
  return `{${Object.entries(value)
    .map(([key, one]) => `${key}: ${flow(one)}`)
    .join(", ")}}`;
}
