import { formatPath } from "../../../cases/index.ts";
import { exampleOf, missingObservations, missingTitle } from "../../../record/index.ts";
import { grouped } from "../../../words/grouped.ts";
import { listing } from "../../../words/listing.ts";
import { type CaseRule, verified } from "../../rule.ts";

export const lobeMissing: CaseRule = {
  id: "lobe-missing",
  scope: "case",
  family: "completeness",
  level: "error",
  summary: "Every lobe of the lungs has its percentage of consolidation, 0 included.",
  protects:
    "A lobe without a number is not a lobe without a lesion; every published lung score needs all of them.",
  lookAlike:
    "A lobe that was lost or torn off was not seen, and 0 would be untrue: take the list out, write not_assessable with the cause, and what the other lobes showed in a note.",
  source: verified("seven lobes in every lung score: Madec & Kobisch 1982; Holt et al. 2011, Table 1"),
  bad: { case: "respiratory: {lungs: {consolidation: {accessory: }}}" },
  good: { case: "respiratory: {lungs: {consolidation: {accessory: 10}}}" },
  check(one, report) {
    const lobes = missingObservations(one).filter(
      ({ organ, part }) => organ.definition.form === "lobed" && part !== undefined,
    );
    for (const [whole, missing] of grouped(lobes, ({ path }) => formatPath(path.slice(0, -1)))) {
      const [first] = missing;
      const alone = missing.length === 1;
      report(
        `${alone ? formatPath(first.path) : whole}: ${listing(missing.map(missingTitle))} ${alone ? "is" : "are"} blank. Write ${missing.map(exampleOf).join(", ")}; 0 if it has none.`,
        alone ? first.path : first.path.slice(0, -1),
        "key",
      );
    }
  },
};
