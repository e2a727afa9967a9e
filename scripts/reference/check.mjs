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

/** What rows may hold that the library no longer computes, because no command used it: counted apart, and never compared. */
const WITHDRAWN = ["poisson", "correlation"];
const WITHDRAWN_VALUES = { icc: ["WMS", "icc11", "icc1k"], "detect-finite-se": ["cannon2001Raw"] };

/** The relative error allowed: 1e-10 for intervals of a proportion, 1e-8 for everything else. */
export const tolerance = (method) => (BINOMIAL.includes(method) ? 1e-10 : 1e-8);

/** An interval without width, which says that there is no doubt, where the library says that it has none to give. */
const isWithheld = (got, wanted) =>
  wanted?.lower !== undefined && wanted.lower === wanted.upper && got?.lower === null && got.upper === null;

/** What of a row is compared, and whether an interval without width was left out of it. */
function comparable(method, got, wanted) {
  let withheld = false;
  const keep = (given, value) => {
    if (typeof value !== "object" || value === null || Array.isArray(value)) return value;
    const without = isWithheld(given, value);
    withheld ||= without;
    return Object.fromEntries(
      Object.entries(value)
        .filter(([key]) => !(without && (key === "lower" || key === "upper")))
        .map(([key, part]) => [key, keep(given?.[key], part)]),
    );
  };
  const gone = WITHDRAWN_VALUES[method] ?? [];
  const kept = keep(got, Object.fromEntries(Object.entries(wanted).filter(([key]) => !gone.includes(key))));
  return { kept, withheld };
}

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
 * @returns per method: number of rows, worst relative error (null when the method is not covered), failing rows,
 *   whether it was withdrawn, and rows in which the library withholds an interval without width.
 */
export function checkReference(s, rows) {
  const known = { ...estimates(s), ...comparisons(s) };
  const methods = new Map();
  for (const { id, method, input, output } of rows) {
    const covered = Object.hasOwn(known, method);
    const withdrawn = WITHDRAWN.includes(method);
    const result = methods.get(method) ?? {
      method,
      rows: 0,
      worst: covered ? 0 : null,
      failures: [],
      withdrawn,
      withheld: [],
    };
    methods.set(method, result);
    result.rows += 1;
    if (!covered) {
      if (!withdrawn) result.failures.push({ id, reason: "method not covered" });
      continue;
    }
    try {
      const got = known[method](input);
      const { kept, withheld } = comparable(method, got, output);
      if (withheld) result.withheld.push(id);
      const error = errorOf(got, kept);
      result.worst = Math.max(result.worst, error);
      if (!(error <= tolerance(method))) result.failures.push({ id, reason: `relative error ${error}` });
    } catch (fault) {
      result.worst = Number.POSITIVE_INFINITY;
      result.failures.push({ id, reason: String(fault) });
    }
  }
  return [...methods.values()];
}
