/** Proportions as people read them. */

/** A proportion from 0 to 1 in per cent with one decimal: `25.9 %`; `0 %` and `100 %` only when it is exactly that. */
export const percent = (proportion: number): string => `${number(proportion)} %`;

/** Both ends of an interval: `9.9 to 65.1 %`. */
export const percentRange = (lower: number, upper: number): string =>
  `${number(lower)} to ${number(upper)} %`;

/** A share that was asked for or a confidence level, without needless decimals: `95 %`, `97.5 %`, `0.05 %`. */
export const levelPercent = (level: number): string => `${Number((level * 100).toPrecision(10))} %`;

function number(proportion: number): string {
  if (proportion === 0 || proportion === 1) return String(proportion * 100);
  const text = (proportion * 100).toFixed(1);
  if (text === "0.0") return "<0.1";
  if (text === "100.0") return ">99.9";
  return text;
}
