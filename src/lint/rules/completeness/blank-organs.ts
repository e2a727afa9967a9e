/** Organs due of a system that others of it are recorded of: one line a system, loud where one of them is a must. */
import { pathOf } from "../../../cases/index.ts";
import type { PlacedOrgan } from "../../../knowledge/index.ts";
import { type BlankSystem, blankSystems } from "../../../record/index.ts";
import { listing } from "../../../words/listing.ts";
import { type CaseRule, practice, type RuleRow } from "../../rule.ts";

interface BlankOrgans extends RuleRow {
  says(blank: BlankSystem): readonly PlacedOrgan[];
  readonly were: string;
}

const rows: readonly BlankOrgans[] = [
  {
    id: "skipped-organ",
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
    says: ({ whole, must }) => (whole ? [] : must),
    were: "due",
  },
  {
    id: "wanted-organ-blank",
    level: "note",
    summary: "An organ that is wanted, and no must, says how it was or why nobody looked.",
    protects: "What was seen and not written down is lost, and the count of organs examined is too low.",
    lookAlike:
      "An organ that nobody meant to open on this visit: name it once for all its pigs, pigs: {left_closed: jaws}.",
    source: practice(
      "common practice of systematic necropsy; what is wanted follows from protocol, age class, sex, signs and manner of death",
    ),
    bad: { case: "liver_pancreas: {pancreas: }" },
    good: { case: "liver_pancreas: {pancreas: {not_examined: lost with the gut}}" },
    // Beside a must, its line names the wanted ones as well.
    says: ({ must, wanted }) => (must.length > 0 ? [] : wanted),
    were: "wanted",
  },
];

export const blankOrgans: readonly CaseRule[] = rows.map(({ says, were, ...row }) => ({
  ...row,
  scope: "case",
  family: "completeness",
  check(one, report) {
    for (const blank of blankSystems(one)) {
      const organs = says(blank);
      const [first] = organs;
      if (first === undefined) continue;
      const also =
        were === "wanted" || blank.wanted.length === 0
          ? ""
          : `; ${listing(blank.wanted.map(({ key }) => key))} ${blank.wanted.length === 1 ? "is" : "are"} wanted`;
      if (organs.length === 1 && also === "")
        report(
          `${first.id} is blank and was ${were}${forgotten(first)}. Write normal, a finding, or not_examined with the reason.`,
          pathOf(first.id),
          "key",
        );
      else
        report(
          `${blank.id}: ${listing(organs.map((organ) => organ.key + forgotten(organ)))} ${organs.length === 1 ? "is" : "are"} blank and ${organs.length === 1 ? "was" : "were"} ${were}${also}. Write "rest: normal" under ${blank.id} if they were examined and are normal, "rest: {not_examined: why}" if not, or record each.`,
          organs.length === 1 ? pathOf(first.id) : pathOf(blank.id),
          "key",
        );
    }
  },
}));

const forgotten = ({ definition }: PlacedOrgan): string =>
  definition.forgotten === true ? " (often forgotten)" : "";
