import { type Case, pathOf } from "../../../cases/index.ts";
import { organs, systems } from "../../../knowledge/index.ts";
import { fact } from "../../../record/index.ts";
import { listing } from "../../../words/listing.ts";
import { type CaseRule, verified } from "../../rule.ts";

const withOrgans = systems.map(({ id, title }) => ({
  id,
  title,
  organs: organs.filter(({ system }) => system === id),
}));

interface SkippedSystem {
  readonly id: string;
  readonly title: string;
  /** Those due, by id. */
  readonly organs: readonly string[];
}

/** Systems of which two or more organs were due and not one is recorded. */
export const skippedSystems = fact((one: Case): readonly SkippedSystem[] =>
  withOrgans
    .filter((system) => system.organs.every((organ) => one.organ(organ).status === "blank"))
    .map(({ id, title }) => ({
      id,
      title,
      organs: one.due.filter(({ system }) => system === id).map((organ) => organ.id),
    }))
    .filter((system) => system.organs.length > 1),
);

export const skippedSystem: CaseRule = {
  id: "skipped-system",
  scope: "case",
  family: "completeness",
  level: "error",
  summary: "Every system with organs due has at least one of them recorded.",
  protects: "A system that nobody looked at may be where the cause was missed; blank is never normal.",
  source: verified(
    "Animal Health Laboratory, University of Guelph: wide organ lists even for a case of one system",
  ),
  bad: { case: "urinary:" },
  good: { case: "urinary: normal" },
  check(one, report) {
    for (const system of skippedSystems(one))
      report(
        `${system.title}: nothing is recorded, and ${listing(system.organs)} were due. Record each organ, or write "${system.id}: normal" if the whole system was examined and is normal.`,
        pathOf(system.id),
        "key",
      );
  },
};
