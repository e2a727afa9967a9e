/** Organs that must be examined, blank where others of their system are recorded: one line a system. */
import { type Case, pathOf } from "../../../cases/index.ts";
import type { PlacedOrgan } from "../../../knowledge/index.ts";
import { askedOfNormal, blankSystems } from "../../../record/index.ts";
import { listing } from "../../../words/listing.ts";
import { type CaseRule, practice } from "../../rule.ts";

export const skippedOrgan: CaseRule = {
  id: "skipped-organ",
  scope: "case",
  family: "completeness",
  level: "error",
  summary:
    "Every organ that must be examined is normal, described, not examined with a reason, or not assessable with the cause.",
  protects:
    "An organ that was forgotten cannot be told from a normal one a week later; blank is never normal.",
  lookAlike:
    "An organ that was lost, rotten or left in the carcass: write not_examined or not_assessable with the reason; blank alone is asked about.",
  source: practice(
    "common practice of systematic necropsy; what is a must follows from protocol, age class, sex, signs and manner of death",
  ),
  bad: { case: "lymphoid: {spleen: }" },
  good: { case: "lymphoid: {spleen: {not_examined: lost with the gut}}" },
  check(one, report) {
    for (const { id, whole, must } of blankSystems(one)) {
      const [first] = must;
      if (first === undefined || whole) continue;
      if (must.length === 1)
        report(
          `${first.id} is blank and was due${aside(one, first)}. Write ${asNormal(one, first)}, a finding, or not_examined with the reason.`,
          pathOf(first.id),
          "key",
        );
      else {
        const asked = must.filter((organ) => askedOfNormal(one, organ).length > 0);
        const also = asked.map((organ) => `; a normal ${organ.key} is ${asNormal(one, organ)}`).join("");
        report(
          `${id}: ${listing(must.map((organ) => organ.key + aside(one, organ)))} are blank and were due. Write "rest: normal" under ${id} if they were examined and are normal, "rest: {not_examined: why}" if not, or record each${also}.`,
          pathOf(id),
          "key",
        );
      }
    }
  },
};

/** How a normal organ is written: by one word, or with what must be observed of it. */
function asNormal(one: Case, organ: PlacedOrgan): string {
  const asked = askedOfNormal(one, organ);
  return asked.length === 0 ? "normal" : `{state: normal, ${asked.join(", ")}}`;
}

/** What is to be known of a blank organ: a note beside it says something, and not whether it is normal. */
function aside(one: Case, organ: PlacedOrgan): string {
  if (one.organ(organ).entry?.note !== undefined) return " (a note alone)";
  return organ.definition.forgotten === true ? " (often forgotten)" : "";
}
