/** Agreement of readers as one tidy table: a value a line, with its limits where it has any. */
import type { AgreeReport, Difference, PairAgreement } from "../../agree/index.ts";
import type { IntraclassCorrelations } from "../../statistics/index.ts";
import { type CsvCell, csv } from "../page/csv.ts";

const head = ["scale", "first", "second", "pigs", "measure", "value", "lower", "upper", "level"];

type Value = readonly [measure: string, value: number | null, lower?: number | null, upper?: number | null];

/** Values are not rounded; numbers have a point. With all readers together, first and second are blank. */
export function agreeCsv({ level, scales }: AgreeReport): string {
  const rows = scales.flatMap(({ scale, pairs, together }) => {
    const row = (first: string, second: string, pigs: number, [measure, ...numbers]: Value): CsvCell[] => [
      scale,
      first,
      second,
      pigs,
      measure,
      ...[0, 1, 2].map((place) => numbers[place] ?? null),
      level,
    ];
    return [
      ...pairs.flatMap((pair) =>
        valuesOf(pair).map((value) => row(pair.first, pair.second, pair.pigs, value)),
      ),
      ...(together === null ? [] : iccs(together).map((value) => row("", "", together.subjects, value))),
    ];
  });
  return csv(head, rows);
}

function valuesOf({ same, grades, icc, difference }: PairAgreement): Value[] {
  const kappas: Value[] =
    grades === null
      ? []
      : [
          ...(["unweighted", "linear", "quadratic"] as const).flatMap((weights): Value[] => {
            const found = grades[weights];
            return found === null ? [] : [[`kappa_${weights}`, found.kappa, found.lower, found.upper]];
          }),
          ["pabak", grades.pabak.value, grades.pabak.lower, grades.pabak.upper],
        ];
  return [
    ["same", same.proportion, same.lower, same.upper],
    ...kappas,
    ...(icc === null ? [] : iccs(icc)),
    ...(difference === null ? [] : differences(difference)),
  ];
}

const differences = ({ mean, second_higher, first_higher, equal, p }: Difference): Value[] => [
  ["mean_difference", mean.mean, mean.lower, mean.upper],
  ["second_higher", second_higher],
  ["first_higher", first_higher],
  ["equal", equal],
  ["sign_test_p", p],
];

const iccs = ({
  agreement,
  consistency,
}: Pick<IntraclassCorrelations, "agreement" | "consistency">): Value[] => [
  ["icc_agreement", agreement.icc, agreement.lower, agreement.upper],
  ["icc_consistency", consistency.icc, consistency.lower, consistency.upper],
];
