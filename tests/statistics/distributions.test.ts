import fc from "fast-check";
import { jStat } from "jstat";
import { describe, expect, it } from "vitest";
import {
  chiSquaredTail,
  fCdf,
  fQuantile,
  normalCdf,
  normalQuantile,
  regularisedGamma,
  studentTCdf,
  studentTQuantile,
  studentTTwoSided,
} from "../../src/statistics/index.ts";
import { every } from "../every.ts";
import { runs } from "../random.ts";
import { expectClose, reference } from "./reference.ts";

interface Tails {
  lower: number;
  upper: number;
}

/** The far side of a quantile: which tail to hand in so that no digits are lost. */
const smaller = ({ lower, upper }: Tails) =>
  lower <= upper ? ({ tail: "lower", p: lower } as const) : ({ tail: "upper", p: upper } as const);

describe("points computed to 60 digits and more", () => {
  const rows = reference<{ a: number; x: number }, Tails>("gamma-tails", 80);
  every("gamma-tails", rows, ({ id, input, output }) => {
    const got = regularisedGamma(input.a, input.x);
    expectClose(got.lower, output.lower, 2e-13, `${id} lower`);
    expectClose(got.upper, output.upper, 2e-13, `${id} upper`);
    expectClose(chiSquaredTail(2 * input.x, 2 * input.a), output.upper, 2e-13, `${id} chi-squared`);
  });

  every(
    "t-tails",
    reference<{ df: number; t: number }, { twoSided: number }>("t-tails", 80),
    ({ id, input: { df, t }, output: { twoSided } }) => {
      expectClose(studentTTwoSided(t, df), twoSided, 1e-13, id);
      expectClose(studentTTwoSided(-t, df), twoSided, 1e-13, id);
      expectClose(studentTCdf(t, df, "upper"), twoSided / 2, 1e-13, id);
      expectClose(studentTCdf(-t, df), twoSided / 2, 1e-13, id);
      expectClose(studentTCdf(t, df), 1 - twoSided / 2, 1e-14, id);
      if (twoSided > 0.9) return; // nearly flat there: t is lost in the rounding of the probability
      expectClose(studentTQuantile(twoSided / 2, df, "upper"), t, 1e-14, `${id} quantile`);
      expectClose(studentTQuantile(twoSided / 2, df), -t, 1e-14, `${id} quantile`);
    },
  );

  every(
    "f-tails",
    reference<{ numerator: number; denominator: number; f: number }, Tails>("f-tails", 80),
    ({ id, input: { f, ...degrees }, output }) => {
      expectClose(fCdf(f, degrees), output.lower, 2e-13, `${id} lower`);
      expectClose(fCdf(f, degrees, "upper"), output.upper, 2e-13, `${id} upper`);
      const { tail, p } = smaller(output);
      expectClose(fQuantile(p, degrees, tail), f, 2e-14, `${id} quantile`);
    },
  );
});

describe("closed forms", () => {
  it("chi-squared with 2 df is exponential, with 4 df exp(-x/2)(1 + x/2)", () => {
    for (const x of [1e-9, 0.1, 1, 3.7, 20, 100, 600]) {
      expectClose(chiSquaredTail(x, 2), Math.exp(-x / 2), 2e-13, `${x}, 2 df`);
      expectClose(chiSquaredTail(x, 2, "lower"), -Math.expm1(-x / 2), 2e-13, `${x}, 2 df, lower`);
      expectClose(chiSquaredTail(x, 4), Math.exp(-x / 2) * (1 + x / 2), 2e-13, `${x}, 4 df`);
    }
  });

  it("chi-squared with 1 df is the square of a standard normal", () => {
    for (const z of [0.01, 0.5, 1, 1.959963984540054, 4, 8, 30]) {
      expectClose(chiSquaredTail(z * z, 1), 2 * normalCdf(z, "upper"), 5e-13, `${z}`);
    }
  });

  it("t with 1 df is Cauchy, with 2 df algebraic", () => {
    for (const t of [0.001, 0.3, 1, 2, 12.7, 1000, 1e8]) {
      expectClose(studentTCdf(t, 1, "upper"), Math.atan2(1, t) / Math.PI, 1e-14, `${t}, 1 df`);
      const root = Math.sqrt(2 + t * t);
      expectClose(studentTCdf(t, 2, "upper"), 1 / (root * (root + t)), 1e-14, `${t}, 2 df`);
    }
    for (const p of [1e-200, 1e-20, 0.001, 0.025, 0.2, 0.49]) {
      expectClose(studentTQuantile(p, 1, "upper"), 1 / Math.tan(Math.PI * p), 1e-12, `${p}, 1 df`);
      const exact = (1 - 2 * p) * Math.sqrt(2 / (4 * p * (1 - p)));
      expectClose(studentTQuantile(p, 2, "upper"), exact, 1e-12, `${p}, 2 df`);
    }
  });

  it("F with 2 and m df is (1 + 2f/m)^(-m/2); F with 1 and m df is t squared", () => {
    for (const m of [1, 2, 5.5, 30, 1000]) {
      for (const f of [1e-6, 0.1, 1, 4, 60]) {
        const exact = Math.exp((-m / 2) * Math.log1p((2 * f) / m));
        expectClose(fCdf(f, { numerator: 2, denominator: m }, "upper"), exact, 2e-13, `${f}, 2 and ${m} df`);
        const twoSided = studentTTwoSided(Math.sqrt(f), m);
        expectClose(fCdf(f, { numerator: 1, denominator: m }, "upper"), twoSided, 2e-13, `${f}, 1 and ${m}`);
      }
    }
  });

  it("t with 20 million df is close to normal", () => {
    for (const p of [1e-10, 0.025, 0.3]) {
      expectClose(studentTQuantile(p, 20_000_000, "upper"), normalQuantile(p, "upper"), 1e-6, `${p}`);
    }
  });
});

describe("against jstat, to the accuracy measured for it", () => {
  it("chi-squared, t and F in the range of ordinary p-values", () => {
    for (const df of [1, 2, 3, 7, 20, 100]) {
      for (const p of [0.001, 0.01, 0.05, 0.3, 0.5, 0.9, 0.999]) {
        expectClose(studentTQuantile(p, df), p === 0.5 ? 0 : jStat.studentt.inv(p, df), 1e-7, `t ${p} ${df}`);
      }
      for (const x of [0.2, 1, 2.5, 9]) {
        expectClose(
          chiSquaredTail(x, df, "lower"),
          jStat.chisquare.cdf(x, df),
          1e-8,
          `chi-squared ${x} ${df}`,
        );
        expectClose(studentTCdf(x, df), jStat.studentt.cdf(x, df), 1e-7, `t ${x} ${df}`);
        const got = fCdf(x, { numerator: 3, denominator: df });
        expectClose(got, jStat.centralF.cdf(x, 3, df), 1e-7, `F ${x} ${df}`);
      }
    }
  });
});

const probability = fc.double({ min: 1e-120, max: 1 - 1e-12, noNaN: true });
const degrees = fc.double({ min: 1, max: 50_000, noNaN: true });

describe("properties", () => {
  it("a quantile leaves its probability in its tail, and the tails fill one", () => {
    fc.assert(
      fc.property(probability, degrees, degrees, fc.constantFrom("lower", "upper"), (p, one, two, tail) => {
        const f = { numerator: one, denominator: two };
        expectClose(studentTCdf(studentTQuantile(p, one, tail), one, tail), p, 1e-10, "t");
        expectClose(fCdf(fQuantile(p, f, tail), f, tail), p, 1e-9, "F");
        const x = fQuantile(p, f, tail);
        expectClose(fCdf(x, f) + fCdf(x, f, "upper"), 1, 1e-15, "both tails");
      }),
      { numRuns: runs(500) },
    );
  });

  it("F turned upside down has its degrees exchanged", () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-3, max: 1e3, noNaN: true }), degrees, degrees, (f, one, two) => {
        const upper = fCdf(f, { numerator: one, denominator: two }, "upper");
        const turned = fCdf(1 / f, { numerator: two, denominator: one });
        if (upper > 1e-100) expectClose(turned, upper, 1e-9, `${f} ${one} ${two}`);
      }),
    );
  });
});

describe("ends and arguments", () => {
  it("0 and 1 give the ends of the range, and the ends give 0 and 1", () => {
    const f = { numerator: 3, denominator: 4 };
    expect([0, 0.5, 1].map((p) => studentTQuantile(p, 3))).toEqual([-Infinity, 0, Infinity]);
    expect([0, 0.5, 1].map((p) => studentTQuantile(p, 3, "upper"))).toEqual([Infinity, 0, -Infinity]);
    expect([0, 1].map((p) => fQuantile(p, f))).toEqual([0, Number.POSITIVE_INFINITY]);
    expect([0, Infinity].map((x) => chiSquaredTail(x, 3))).toEqual([1, 0]);
    expect([0, Infinity].map((x) => chiSquaredTail(x, 3, "lower"))).toEqual([0, 1]);
    expect([-Infinity, 0, Infinity].map((t) => studentTCdf(t, 3))).toEqual([0, 0.5, 1]);
    expect([-Infinity, 0, Infinity].map((t) => studentTTwoSided(t, 3))).toEqual([0, 1, 0]);
    expect([0, Infinity].map((x) => fCdf(x, f))).toEqual([0, 1]);
    expect([0, Infinity].map((x) => fCdf(x, f, "upper"))).toEqual([1, 0]);
  });

  it.each([
    [() => chiSquaredTail(1, 0), "df must lie from 1 to 20000000, got 0"],
    [() => chiSquaredTail(-1, 2), "x must lie from 0 to Infinity, got -1"],
    [() => studentTCdf(Number.NaN, 2), "t must lie from -Infinity to Infinity, got NaN"],
    [() => studentTQuantile(0.1, Number.NaN), "df must lie from 1 to 20000000, got NaN"],
    [() => studentTTwoSided(1, 3e7), "df must lie from 1 to 20000000, got 30000000"],
    [() => fCdf(1, { numerator: 0.5, denominator: 2 }), "numerator must lie from 1 to 20000000, got 0.5"],
    [
      () => fQuantile(0.1, { numerator: 1, denominator: 0 }),
      "denominator must lie from 1 to 20000000, got 0",
    ],
    [() => fCdf(-1, { numerator: 1, denominator: 1 }), "f must lie from 0 to Infinity, got -1"],
    [() => regularisedGamma(0.1, 1), "a must lie from 0.5 to 10000001, got 0.1"],
  ])("%s is refused", (call, message) => {
    expect(call).toThrow(new RangeError(message));
  });
});
