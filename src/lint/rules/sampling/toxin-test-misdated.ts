import { moment } from "../../../cases/index.ts";
import { sampleRules } from "../../../knowledge/index.ts";
import { isFor, isVisitDateDoubtful, samplesOf } from "../../../record/index.ts";
import { practice, type VisitRule } from "../../rule.ts";

export const toxinTestMisdated: VisitRule = {
  id: "toxin-test-misdated",
  scope: "visit",
  family: "sampling",
  level: "warning",
  silent: "never",
  summary:
    "The result of a herd test is dated after the visit and its samples, and within a year of the visit; a pending test has no date.",
  protects:
    "A result from another year lets the reading of the snouts say progressive, or clears the herd, on pigs that are long gone.",
  lookAlike:
    "An older result that still holds for the herd: it belongs to the visit of its time, and into the note of this one.",
  source: practice("order of events; common practice"),
  bad: {
    visit: "tests: [{test: toxin-gene, from: nasal swabs of six weaners, result: negative, at: 2025-04-28}]",
  },
  good: {
    visit: "tests: [{test: toxin-gene, from: nasal swabs of six weaners, result: negative, at: 2026-04-28}]",
  },
  check(visit, reportVisit) {
    const { date, tests } = visit.record;
    if (tests === undefined || isVisitDateDoubtful(visit)) return;
    const day = dayOf(date);
    const taken = visit.cases
      .flatMap(samplesOf)
      .filter(
        ({ sample }) => sampleRules.toxin_gene.from.includes(sample.from) && isFor(sample, "pcr", "culture"),
      )
      .flatMap(({ sample }) => {
        const on = dayOf(sample.at);
        return on === undefined ? [] : [{ id: sample.id, text: sample.at, on }];
      })
      .sort((a, b) => a.on - b.on);
    for (const [index, { result, at }] of tests.entries()) {
      const path = ["tests", index, "at"];
      const answered = dayOf(at);
      const [first] = taken;
      if (at === undefined && result !== "pending")
        reportVisit(
          `tests[${index}]: the result is ${result}, but its date is blank. Write at: the date of the laboratory report; without it nobody can tell which pigs it is about.`,
          ["tests", index],
        );
      if (at === undefined || answered === undefined) continue;
      const wrong =
        result === "pending"
          ? `the result has a date (${at}), but is still pending. Write the result, or take the date out.`
          : day !== undefined && answered < day
            ? `the result (${at}) is dated before the visit (${date}). Correct the date; an older test belongs to the visit of its time, or under note.`
            : first !== undefined && answered < first.on
              ? `the result (${at}) is dated before the first sample for it was taken (${first.id}, ${first.text}). Correct one of the two dates.`
              : day !== undefined && answered > day + latestDays
                ? `the result (${at}) is dated more than a year after the visit (${date}). Correct the date; a later test belongs to the visit of its time.`
                : undefined;
      if (wrong !== undefined) reportVisit(`tests[${index}].at: ${wrong}`, path);
    }
  },
};

/** No laboratory takes longer; our own limit. */
const latestDays = 366;

/** Whole days, by the clock that was written down. */
function dayOf(text: string | undefined): number | undefined {
  const at = moment(text);
  return at === undefined ? undefined : Math.floor(at.written / 24);
}
