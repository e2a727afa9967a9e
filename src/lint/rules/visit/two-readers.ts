import type { Case } from "../../../cases/index.ts";
import { organs } from "../../../knowledge/index.ts";
import { listing } from "../../../words/listing.ts";
import { plainName } from "../../../words/plain-name.ts";
import { practice, type VisitRule } from "../../rule.ts";

/** Organs, and what is scored on them by eye: per cents, grades of parts, or grades under a scale. */
const scoredOrgans = organs.map((organ) => ({
  organ,
  keys: [
    ...Object.entries(organ.definition.observations ?? {})
      .filter(([, { kind }]) => kind === "percent" || kind === "grade")
      .map(([key]) => key),
    "grades",
  ],
}));

export const twoReaders: VisitRule = {
  id: "two-readers",
  scope: "visit",
  family: "visit",
  level: "note",
  summary: "Where two people score the same organ on one visit, the visit says how they came to score alike.",
  protects:
    "One reader's 10 % is another's 20 %; if they scored different groups, the difference between them passes for one between the groups.",
  lookAlike:
    "One person whose name is written in two ways (R. Sallow, Dr Sallow) is one reader: the last word of the name tells people apart.",
  source: practice("common practice of scoring: observers are compared before their scores are pooled"),
  bad: {
    others: ["case: birch-2026-04-20-02\nexaminer: T. Fern\npig: {tag: '902'}"],
    visit: "cases: [birch-2026-04-20-01, birch-2026-04-20-02]",
  },
  good: {
    others: ["case: birch-2026-04-20-02\nexaminer: T. Fern\npig: {tag: '902'}"],
    visit:
      "cases: [birch-2026-04-20-01, birch-2026-04-20-02]\npigs: {readers: both pigs scored by both before the next}",
  },
  check(visit, reportVisit) {
    if (visit.record.pigs?.readers !== undefined) return;
    if (namesOf(visit.cases).length < 2) return;
    const shared = scoredOrgans
      .map(({ organ, keys }) => ({
        organ,
        readers: namesOf(
          visit.cases.filter((one) => {
            const { entry } = one.organ(organ);
            return entry !== undefined && keys.some((key) => entry[key] !== undefined);
          }),
        ),
      }))
      .filter(({ readers }) => readers.length > 1);
    const readers = eachOnce(shared.flatMap((entry) => entry.readers));
    if (shared.length > 0)
      reportVisit(
        `${listing(readers)} both scored ${listing(shared.map(({ organ }) => organ.id))}. Score the first pigs together, and say so under pigs: {readers: …}.`,
        ["pigs", "readers"],
        "key",
      );
  },
};

/** The people who examined some pigs. */
const namesOf = (cases: readonly Case[]): string[] =>
  eachOnce(cases.map((one) => one.record.examiner).filter((name) => name !== undefined));

/** Each person once, by surname, as it was last written. */
const eachOnce = (names: readonly string[]): string[] => [
  ...new Map(names.map((name) => [plainName(name).split(" ").at(-1), name])).values(),
];
