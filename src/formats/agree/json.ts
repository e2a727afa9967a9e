/** Agreement of readers for scripts. Field names are stable; docs/json.md describes them. */
import type { AgreeReport, Difference, PairAgreement } from "../../agree/index.ts";
import type { IntraclassCorrelations, Kappa } from "../../statistics/index.ts";
import { outputJson } from "../page/json.ts";

export function agreeJson({ level, scales }: AgreeReport): string {
  return outputJson("agree", 1, {
    level,
    scales: scales.map(({ pairs, together, together_caution, published, ...scale }) => ({
      ...scale,
      pairs: pairs.map(pairOf),
      together:
        together === null
          ? null
          : {
              readers: together.readers,
              pigs: together.subjects,
              ...iccOf(together),
              caution: together_caution,
            },
      published: published.map(({ source, ...study }) => ({
        ...study,
        source: source.cite,
        confidence: source.confidence,
      })),
    })),
  });
}

function pairOf({ first, second, pigs, same, grades, icc, difference, caution }: PairAgreement) {
  return {
    first,
    second,
    pigs,
    same: { proportion: same.proportion, lower: same.lower, upper: same.upper },
    kappa:
      grades === null
        ? null
        : {
            unweighted: kappaOf(grades.unweighted),
            linear: grades.linear && kappaOf(grades.linear),
            quadratic: grades.quadratic && kappaOf(grades.quadratic),
          },
    pabak: grades === null ? null : grades.pabak,
    ...(icc === null ? { icc_agreement: null, icc_consistency: null } : iccOf(icc)),
    difference: difference && differenceOf(difference),
    table: grades === null ? null : grades.table,
    caution,
  };
}

function differenceOf({ mean: { mean, lower, upper, reason }, ...counts }: Difference) {
  return { mean, lower, upper, reason, ...counts };
}

function kappaOf({ kappa: value, standardError: standard_error, lower, upper, reason }: Kappa) {
  return { value, standard_error, lower, upper, reason };
}

function iccOf({ agreement, consistency }: Pick<IntraclassCorrelations, "agreement" | "consistency">) {
  return { icc_agreement: correlation(agreement), icc_consistency: correlation(consistency) };
}

function correlation({ icc: value, lower, upper, reason }: IntraclassCorrelations["agreement"]) {
  return { value, lower, upper, reason };
}
