/** In which order diseases are shown: by counted evidence of named strength. */
import { type Fit, isCore } from "./fit.ts";

/** What is counted of a disease: statements that are met. */
export interface Counts {
  readonly hallmark: number;
  readonly typical: number;
  readonly supports: number;
  readonly against: number;
}

export function countsOf({ favour, against, age }: Fit): Counts {
  const count = (strength: string): number => favour.filter((one) => one.strength === strength).length;
  return {
    hallmark: count("hallmark"),
    typical: count("typical"),
    supports: count("supports") + (age === "usual" ? 1 : 0),
    against: against.length + (age === "unusual" ? 1 : 0),
  };
}

export const orderRule = ["TODO"];

/** What is counted of a disease, in the order in which it decides. */
export const rankOf = (fit: Fit): readonly number[] => {
  const { hallmark, typical, against } = countsOf(fit);
  const places = [...fit.places.values()];
  const core = places.filter(isCore).length;
  return [
    Math.min(1, hallmark),
    core * 2 + (places.length - core) + (fit.age === "usual" ? 1 : 0) - 2 * against,
    typical,
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
