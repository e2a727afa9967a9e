import { type Case, formatPath } from "../../../cases/index.ts";
import { areAllOfAnotherYear, yearSlips } from "../../../record/index.ts";
import { count } from "../../../words/listing.ts";
import { practice, type VisitRule } from "../../rule.ts";

export const yearOffVisit: VisitRule = {
  id: "year-off-visit",
  scope: "visit",
  family: "visit",
  silent: "never",
  level: "error",
  summary: "Death, opening and samples are dated in the year of the visit.",
  protects:
    "In January the old year is typed out of habit, and the hours since death, and with them the worth of every sample, are reckoned from it.",
  lookAlike:
    "A pig that was frozen for half a year: only a date that the year of the visit would bring back to its week is asked about.",
  source: practice("order of events; common practice"),
  bad: { case: "death: {at: 2025-04-20T09:10}" },
  good: { case: "death: {at: 2026-04-20T09:10}" },
  check(visit, reportVisit, reportCase) {
    const slipped = visit.cases.flatMap((one) => {
      const slips = yearSlips(one);
      return slips.length === 0 ? [] : [{ one, slips }];
    });
    if (areAllOfAnotherYear(visit))
      reportVisit(
        `date: ${visit.record.date}, yet all ${count(slipped.length, "pig")} died and were opened in another year. Check the year.`,
        ["date"],
      );
    else for (const { one, slips } of slipped) reportSlips(one, slips, visit.record.date, reportCase);
  },
};

function reportSlips(
  one: Case,
  [first, ...others]: ReturnType<typeof yearSlips>,
  date: string | undefined,
  reportCase: Parameters<VisitRule["check"]>[2],
): void {
  if (first === undefined) return;
  const { path, name, text, days } = first;
  const more =
    others.length === 0
      ? ""
      : ` (and so ${others.length === 1 ? "is" : "are"} ${count(others.length, "other time")})`;
  reportCase(one)(
    `${formatPath(path)}: the ${name} (${text}) is ${Math.abs(days)} days ${days < 0 ? "before" : "after"} the visit on ${date}${more}. Check the year.`,
    path,
  );
}
