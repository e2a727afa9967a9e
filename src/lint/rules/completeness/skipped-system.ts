import { type Case, pathOf } from "../../../cases/index.ts";
import { type BlankSystem, blankSystems } from "../../../record/index.ts";
import { listing } from "../../../words/listing.ts";
import { type CaseRule, verified } from "../../rule.ts";

/** Of a blank system, who must be examined, and who is wanted beside them: `lungs and trachea were due (bronchi wanted)`. */
const named = ({ must, wanted }: BlankSystem): string =>
  `${listing(must.map(({ id }) => id))} ${must.length === 1 ? "was" : "were"} due${wanted.length === 0 ? "" : ` (wanted: ${listing(wanted.map(({ id }) => id))})`}`;

export const skippedSystem: CaseRule = {
  id: "skipped-system",
  scope: "case",
  family: "completeness",
  level: "error",
  summary: "Every system with organs due has at least one of them recorded.",
  protects: "A system that nobody looked at may be where the cause was missed; blank is never normal.",
  lookAlike:
    "A system looked at as one, or in which only the content was noted: write it as normal, or rest: normal beside what is recorded, or rest: {not_examined: why}.",
  source: verified(
    "Animal Health Laboratory, University of Guelph: wide organ lists even for a case of one system",
  ),
  bad: { case: "urinary:" },
  good: { case: "urinary: normal" },
  check(one: Case, report) {
    for (const system of blankSystems(one))
      if (system.whole && system.must.length > 0)
        report(
          `${system.title}: nothing is recorded, and ${named(system)}. Record each organ, or write "${system.id}: normal" if the whole system was examined and is normal.`,
          pathOf(system.id),
          "key",
        );
  },
};
