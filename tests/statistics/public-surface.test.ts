import { expect, it } from "vitest";
import * as statistics from "../../src/statistics/index.ts";

it("the public names are these and no others", () => {
  expect(Object.keys(statistics).sort()).toEqual([
    "BINOMIAL_METHODS",
    "betaQuantile",
    "binomialInterval",
    "finiteInterval",
    "hypergeometricAtLeast",
    "hypergeometricAtMost",
    "hypergeometricProbability",
    "normalCdf",
    "normalQuantile",
    "oneSidedLower",
    "oneSidedUpper",
    "regularisedBeta",
    "summarise",
    "zeroUpperFinite",
  ]);
});
