/** Proportions as people read them. */

/**
 * A proportion from 0 to 1 in per cent, with one decimal unless told otherwise: `25.9 %`; `0 %` and `100 %` only when it
 * is exactly that.
 */
export const percent = (proportion: number, decimals = 1): string => `${number(proportion, decimals)} %`;

/** Both ends of an interval: `9.9 to 65.1 %`. */
export const percentRange = (lower: number, upper: number): string =>
  `${number(lower)} to ${number(upper)} %`;

/** A share that was asked for or a confidence level, without needless decimals: `95 %`, `97.5 %`, `0.05 %`. */
export const levelPercent = (level: number): string => `${Number((level * 100).toPrecision(14))} %`;

/** More decimals than a proportion near 1 has. */
const mostDecimals = 14;

/** Decimals of per cent in which what reaches a level differs from what does not: 1 for 95 %, 3 for 99.99 %. */
export function decimalsFor(level: number): number {
  const decimals = 1 + Math.ceil(-Math.log10((1 - level) * 100) - 1e-3);
  return Math.min(mostDecimals, Math.max(1, decimals));
}

/** The fewest decimals, from `decimals` up, in which two proportions differ; `decimals` when they are the same. */
export function decimalsApart(one: number, other: number, decimals: number): number {
  for (let more = decimals; one !== other && more <= mostDecimals; more++)
    if (number(one, more) !== number(other, more)) return more;
  return decimals;
}

function number(proportion: number, decimals = 1): string {
  if (proportion === 0 || proportion === 1) return String(proportion * 100);
  const text = (proportion * 100).toFixed(decimals);
  if (Number(text) === 0) return `<${(10 ** -decimals).toFixed(decimals)}`;
  if (Number(text) === 100) return `>${(100 - 10 ** -decimals).toFixed(decimals)}`;
  return text;
}
