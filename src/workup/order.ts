/** In which order diseases are shown: by counted evidence of named strength. */
import { type Fit, isCore } from "./fit.ts";

/** What is counted of a disease, in the order in which it decides. */
export const rankOf = (fit: Fit): readonly number[] => {
  const count = (strength: string): number => fit.favour.filter((one) => one.strength === strength).length;
  const places = [...fit.places.values()];
  const core = places.filter(isCore).length;
  return [
    Math.min(1, count("hallmark")),
    core * 2 +
      (places.length - core) +
      (fit.age === "usual" ? 1 : 0) -
      2 * (fit.against.length + (fit.age === "unusual" ? 1 : 0)),
    count("typical"),
  ];
};

export function byRank(a: Fit, b: Fit): number {
  const [first, second] = [rankOf(a), rankOf(b)];
  for (const [index, value] of first.entries()) {
    const other = second[index] ?? 0;
    if (value !== other) return other - value;
  }
  return a.disease.name < b.disease.name ? -1 : 1;
}
