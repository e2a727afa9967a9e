// Runs rows of reference values against the library. The only place where a method of the rows is tied to our functions.
import { comparisons } from "./comparisons.mjs";
import { estimates } from "./estimates.mjs";

const BINOMIAL = [
  "clopper-pearson",
  "mid-p",
  "blaker",
  "wilson",
  "jeffreys",
  "agresti-coull",
  "one-sided-upper",
  "hypergeometric-ci",
  "zero-upper-finite",
];

/** The relative error allowed: 1e-10 for intervals of a proportion, 1e-8 for everything else. */
export const tolerance = (method) => (BINOMIAL.includes(method) ? 1e-10 : 1e-8);

/** Relative error of one value: a wanted 0, null or text must be met exactly, an object key by key. */
export function errorOf(got, wanted) {
  if (wanted === "Infinity") return got === Number.POSITIVE_INFINITY ? 0 : Number.POSITIVE_INFINITY;
  if (wanted === null) return got === null || got === undefined ? 0 : Number.POSITIVE_INFINITY;
  if (typeof wanted === "object") {
    return Math.max(0, ...Object.entries(wanted).map(([key, value]) => errorOf(got?.[key], value)));
  }
  if (got === wanted) return 0;
  const error = Math.abs(got - wanted) / Math.abs(wanted);
  return typeof wanted === "number" && error >= 0 ? error : Number.POSITIVE_INFINITY;
}

/**
 * Runs all rows.
 *
 * @param s the library, `carcase/statistics` built or its source.
 * @param rows of the form `{id, method, input, output}`.
 * @returns per method: number of rows, worst relative error (null when the method is not covered), failing rows.
 */
export function checkReference(s, rows) {
  const known = { ...estimates(s), ...comparisons(s) };
  const methods = new Map();
  for (const { id, method, input, output } of rows) {
    const covered = Object.hasOwn(known, method);
    const result = methods.get(method) ?? { method, rows: 0, worst: covered ? 0 : null, failures: [] };
    methods.set(method, result);
    result.rows += 1;
    if (!covered) {
      result.failures.push({ id, reason: "method not covered" });
      continue;
    }
    try {
      const error = errorOf(known[method](input), output);
      result.worst = Math.max(result.worst, error);
      if (!(error <= tolerance(method))) result.failures.push({ id, reason: `relative error ${error}` });
    } catch (fault) {
      result.worst = Number.POSITIVE_INFINITY;
      result.failures.push({ id, reason: String(fault) });
    }
  }
  return [...methods.values()];
}
