/** The version of the format in which a file is written. */

/** What this carcase reads and writes. */
export const currentFormat = 1;

/** As written; undefined where it is no version. */
export function formatOf({ format }: { readonly format?: unknown }): number | undefined {
  const written = typeof format === "string" && /^\d{1,4}$/.test(format.trim()) ? Number(format) : format;
  return typeof written === "number" && Number.isInteger(written) && written > 0 ? written : undefined;
}

/** @returns why a file cannot be read as it is, in a sentence: it is of another version */
export function otherFormat(
  value: { readonly format?: unknown },
  current = currentFormat,
): string | undefined {
  const format = formatOf(value);
  if (format === undefined || format === current) return undefined;
  const reads = `format: ${format} is ${format > current ? "newer" : "older"} than what this carcase reads, format ${current}`;
  return format > current
    ? `${reads}. Install the newest carcase; the file is right as it is, so do not change the number.`
    : `${reads}. carcase migrate writes the file anew; do not change the number by hand.`;
}
