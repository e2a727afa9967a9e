/** What is open and what arrived as one tidy table: a line a test that waits, and a line a result. */
import type { Arrived, VisitResults, Waiting } from "../../results/index.ts";
import { type CsvCell, csv } from "../page/csv.ts";
import { portablePath } from "../page/portable-path.ts";

const waitingKeys = ["since", "days"] as const satisfies readonly (keyof Waiting)[];
const arrivedKeys = [
  "agent",
  "analyte",
  "interpretation",
  "value",
  "unit",
  "ct",
  "cut_off",
  "titre",
  "date",
  "laboratory",
  "reference",
  "text",
] as const satisfies readonly (keyof Arrived)[];

const head = [
  "visit",
  "state",
  "sample",
  "case",
  "test",
  "from",
  ...waitingKeys,
  ...arrivedKeys,
  "file",
  "line",
];

export const resultsCsv = (visits: readonly VisitResults[]): string =>
  csv(
    head,
    visits.flatMap(({ visit, open, arrived }) => [
      ...open.map((one): CsvCell[] => [
        visit,
        "open",
        one.sample,
        one.case,
        one.test,
        one.from,
        one.since,
        one.days,
        ...arrivedKeys.map(() => null),
        null,
        null,
      ]),
      ...arrived.map((one): CsvCell[] => [
        visit,
        one.pool ? "pool" : "arrived",
        one.samples.join(" "),
        one.cases.join(" "),
        one.test,
        null,
        null,
        one.days,
        ...arrivedKeys.map((key) => one[key]),
        portablePath(one.file),
        one.line,
      ]),
    ]),
  );
