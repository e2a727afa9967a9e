import type { Case } from "../../../cases/index.ts";
import { growth } from "../../../knowledge/index.ts";
import type { CaseRule } from "../../rule.ts";

/** Median weight in kg at an age in days, between the points of growth.yaml; undefined beyond the last. */
export function medianWeight(days: number): number | undefined {
  const points = growth.median_kg;
  for (const [index, [age, kg]] of points.entries()) {
    if (days > age) continue;
    const [before, beforeKg] = points[index - 1] ?? [age, kg];
    return age === before ? kg : beforeKg + ((kg - beforeKg) * (days - before)) / (age - before);
  }
  return undefined;
}

export const weightImplausible: CaseRule = {
  id: "weight-implausible",
  scope: "case",
  family: "consistency",
  level: "warning",
  summary: "The weight is believable for the age.",
  protects:
    "A wrong unit or a swapped tag shows here first: 175 kg for 17.5 kg, grams for kilograms, days for weeks.",
  lookAlike:
    "A runt or a starved pig: write wasting or poor-growth among its signs, or basis: culled, and the lower limit gives way; so it does on the first day of life.",
  source: growth.source,
  bad: { case: "pig: {age: 58 d, weight: 175 kg}" },
  good: { case: "pig: {age: 58 d, weight: 14 kg}" },
  check(one, report) {
    const { ageDays, weightKg } = one;
    if (ageDays === undefined || weightKg === undefined) return;
    const median = medianWeight(ageDays);
    if (median === undefined) return;
    const [low, high] = [median * (isBehind(one) ? growth.low_wasting : growth.low), median * growth.high];
    if (weightKg < low || weightKg > high)
      report(
        `pig.weight: ${one.record.pig?.weight} at ${one.record.pig?.age} is hard to believe; about ${kilograms(low)} to ${kilograms(high)} would fit (from memory). Check number, unit, age and tag.`,
        ["pig", "weight"],
      );
  },
};

/** A pig that wastes, lags behind or was culled is lighter than its mates, and so is the runt of a litter at birth. */
const isBehind = ({ ageDays = Number.POSITIVE_INFINITY, signs, record }: Case): boolean =>
  ageDays <= 1 ||
  signs.some((sign) => sign === "wasting" || sign === "poor-growth") ||
  record.selection?.basis === "culled";

const kilograms = (kg: number): string => `${kg < 10 ? kg.toFixed(1) : kg.toFixed(0)} kg`;
