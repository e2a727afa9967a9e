/** Numbers as people read them in a table. */

/** At most two decimals, none where they are zero: 16.6, 3, 0.25. A dash for null. */
export function number(value: number | null, decimals = 2): string {
  return value === null ? "–" : String(Number(value.toFixed(decimals)));
}
