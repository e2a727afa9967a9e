import type { Case } from "../../../cases/index.ts";
import { organs, type PlacedOrgan } from "../../../knowledge/index.ts";
import { listing } from "../../../words/listing.ts";
import { plainName } from "../../../words/plain-name.ts";
import type { VisitRule } from "../../rule.ts";

export const twoReaders: VisitRule = {
  id: "two-readers",
  scope: "visit",
  family: "visit",
  level: "note",
  summary: "Where two people score the same organ in one visit, it is written how they came to score alike.",
  protects:
    "One reader's 10 % is another one's 20 %; if the readers had different groups, their difference passes for one between the groups.",
  source: { cite: "agreement between observers; common practice", confidence: "common-practice" },
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
    const read = organs.map((organ) => ({ organ, readers: readersOf(visit.cases, organ) }));
    const shared = read.filter(({ readers }) => readers.length > 1);
    const readers = namesOf(shared.flatMap((entry) => entry.readers));
    if (shared.length > 0)
      reportVisit(
        `${listing(readers)} both scored ${listing(shared.map(({ organ }) => organ.id))}. Score the first pigs together, and say so under pigs: {readers: …}.`,
        ["pigs", "readers"],
        "key",
      );
  },
};

/** Who scored an organ by eye: gave per cents, or grades under a scale. */
function readersOf(cases: readonly Case[], organ: PlacedOrgan): string[] {
  const scored = Object.entries(organ.definition.observations ?? {})
    .filter(([, { kind }]) => kind === "percent" || kind === "grade")
    .map(([key]) => key);
  const readers = cases
    .filter((one) => {
      const entry = one.organ(organ).entry;
      return [...scored, "grades"].some((key) => entry?.[key] !== undefined);
    })
    .map((one) => one.record.examiner)
    .filter((name) => name !== undefined);
  return namesOf(readers);
}

/** Each name once, as it was last written. */
const namesOf = (names: readonly string[]): string[] => [
  ...new Map(names.map((name) => [plainName(name), name])).values(),
];
