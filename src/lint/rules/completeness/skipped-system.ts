import { type Case, pathOf } from "../../../cases/index.ts";
import { organs, systems } from "../../../knowledge/index.ts";
import { listing } from "../../../words/listing.ts";
import type { CaseRule } from "../../rule.ts";

/** Systems of which two or more organs were due and not one has a word. */
export function skippedSystems(one: Case): { id: string; title: string; organs: string[] }[] {
  return systems.flatMap(({ id, title }) => {
    const due = one.due.filter((organ) => organ.system === id);
    const untouched = organs
      .filter((organ) => organ.system === id)
      .every((organ) => one.organ(organ).status === "blank");
    return untouched && due.length > 1 ? [{ id, title, organs: due.map((organ) => organ.id) }] : [];
  });
}

export const skippedSystem: CaseRule = {
  id: "skipped-system",
  scope: "case",
  family: "completeness",
  level: "error",
  summary: "Every system with organs due has at least a word.",
  protects: "A system that nobody looked at is the place where the cause was missed; blank is never normal.",
  source: {
    cite: "Animal Health Laboratory, University of Guelph: wide organ lists even for a case of one system",
    confidence: "verified",
  },
  bad: { case: "urinary:" },
  good: { case: "urinary: normal" },
  check(one, report) {
    for (const system of skippedSystems(one))
      report(
        `${system.title}: nothing is recorded. Due were ${listing(system.organs)}. Write each organ, or "${system.id}: normal" if the whole system was looked at and is normal.`,
        pathOf(system.id),
        "key",
      );
  },
};
