/** A written length: `10 mm`. */

const millimetres: Readonly<Record<string, number>> = { mm: 1, cm: 10 };

/** Units that a length in a tracing may have. */
export const lengthUnits: readonly string[] = Object.keys(millimetres);

/** Millimetres in one of a unit; undefined for a unit that is not known. */
export const inMillimetres = (unit: string): number | undefined =>
  Object.hasOwn(millimetres, unit) ? millimetres[unit] : undefined;

/** @returns millimetres, or undefined when the text is not a length in mm or cm */
export function lengthOf(text: string): number | undefined {
  const [, number = "", unit = ""] = /^\s*(\d+(?:[.,]\d+)?)\s*([a-z]+)\s*$/i.exec(text) ?? [];
  const size = inMillimetres(unit.toLowerCase());
  return size === undefined ? undefined : Number(number.replace(",", ".")) * size;
}
