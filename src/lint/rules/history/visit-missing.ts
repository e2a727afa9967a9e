/** What every visit says of its history, even if the answer is none. */
import { type RuleRow, type VisitRule, verified } from "../../rule.ts";

interface Missing extends RuleRow {
  readonly key: "complaint" | "veterinarian" | "treatments" | "vaccinations";
  readonly write: string;
}

const source = verified(
  "submission guidelines: Animal Health Laboratory, University of Guelph (2020;24(1):2); NDSU Veterinary Diagnostic Laboratory",
);

const rows: readonly Missing[] = [
  {
    id: "complaint-missing",
    level: "warning",
    summary: "The visit says what the farm reported.",
    protects: "The complaint decides the tests; without it a laboratory guesses, and you guess with it.",
    lookAlike:
      "A visit without any complaint, such as a routine check: write none, and why you went; that is an answer.",
    source,
    bad: { visit: "complaint: " },
    good: { visit: "complaint: sneezing in the second nursery room for the last ten days" },
    key: "complaint",
    write: "Write what the farm reported, in its own words; if nothing, write none and why you went.",
  },
  {
    id: "veterinarian-missing",
    level: "warning",
    summary: "The visit says who made it.",
    protects: "A laboratory that finds something notifiable, or nothing at all, must know whom to ring.",
    lookAlike:
      "A visit by a student or a technician: write the veterinarian who answers for it; the hand at the table is the examiner of the case.",
    source,
    bad: { visit: "veterinarian: " },
    good: { visit: "veterinarian: R. Sallow" },
    key: "veterinarian",
    write: "Write who made the visit.",
  },
  {
    id: "treatments-missing",
    level: "warning",
    summary: "The visit says what the groups were treated with, or that they were not.",
    protects:
      "Blank does not mean none: it may hide a week of antibiotic in the water and a culture that cannot grow.",
    lookAlike:
      "Nobody can say what was given: treatments: [unknown] says that it was asked, which blank does not.",
    source,
    bad: { visit: "treatments: " },
    good: { visit: "treatments: [none]" },
    key: "treatments",
    write:
      "List them, such as [{group: nursery-2, with: amoxicillin, route: in-water, antimicrobial: yes, from: 2026-03-10}], or write [none].",
  },
  {
    id: "vaccinations-missing",
    level: "warning",
    summary: "The visit says what the pigs were vaccinated against, or that they were not.",
    protects: "In a vaccinated pig, antibodies and some PCR results may come from the vaccine.",
    lookAlike:
      "A farm that vaccinates sows only: list that, and to whom it was given; [none] is for a farm without any vaccine.",
    source,
    bad: { visit: "vaccinations: " },
    good: { visit: "vaccinations: [none]" },
    key: "vaccinations",
    write: "List what is given, to which pigs and at what age, or write [none].",
  },
];

export const visitMissing: readonly VisitRule[] = rows.map(({ key, write, ...row }) => ({
  ...row,
  scope: "visit",
  family: "history",
  check(visit, reportVisit) {
    if (visit.record[key] === undefined) reportVisit(`${key} is blank. ${write}`, [key], "key");
  },
}));
