/** Values with their unit, as people write them. The schema has already checked the form. */

const perUnit = {
  age: { h: 1 / 24, d: 1, wk: 7, mo: 30.4375, a: 365.25 },
  duration: { min: 1 / 60, h: 1, d: 24, wk: 168, mo: 730.5 },
  mass: { g: 0.001, kg: 1 },
  length: { mm: 1, cm: 10 },
  volume: { ml: 0.001, l: 1 },
  temperature: { "°C": 1 },
} as const;

/** Kinds of quantity and the unit they are converted to: age d, duration h, mass kg, length mm, volume l, temperature °C. */
export type QuantityKind = keyof typeof perUnit;

/**
 * Reads `17.5 kg` as 17.5, `8 wk` as 56.
 * @returns the value in the unit of the kind (see {@link QuantityKind}), or undefined when the text is not of
 * that kind. Months are 30.4375 d and years 365.25 d (mean Gregorian lengths).
 */
export function quantity(kind: QuantityKind, text: string | undefined): number | undefined {
  const match = text === undefined ? null : /^(-?\d+(?:\.\d+)?)\s*([a-z°C]+)$/.exec(text);
  const factors: Readonly<Record<string, number>> = perUnit[kind];
  const unit = match?.[2] ?? "";
  const factor = Object.hasOwn(factors, unit) ? factors[unit] : undefined;
  return match === null || factor === undefined ? undefined : Number(match[1]) * factor;
}
