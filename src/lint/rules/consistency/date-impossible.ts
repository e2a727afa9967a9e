import { formatPath, moment, type Path } from "../../../cases/index.ts";
import { type CaseRule, practice } from "../../rule.ts";

export const dateImpossible: CaseRule = {
  id: "date-impossible",
  scope: "case",
  family: "consistency",
  level: "error",
  summary: "Every date is a day of the calendar.",
  protects:
    "The 30th of February is a typing error, and onset and autolysis are reckoned from the day that was meant.",
  lookAlike:
    "Nothing: a day that is in no calendar was never meant. Where only the month is known, leave the key blank and say it in a note.",
  source: practice("Gregorian calendar, ISO 8601"),
  bad: { case: "selection: {onset: 2026-02-30}" },
  good: { case: "selection: {onset: 2026-04-19}" },
  check({ record }, report) {
    const look = (text: string | undefined, ...path: Path): void => {
      if (text !== undefined && dated.test(text) && moment(text) === undefined)
        report(
          `${formatPath(path)}: there is no ${text.slice(0, 10)} in the calendar. Correct the day.`,
          path,
        );
    };
    look(record.selection?.onset, "selection", "onset");
    look(record.death?.at, "death", "at");
    look(record.opened?.at, "opened", "at");
    look(record.closed?.at, "closed", "at");
    for (const [index, { at }] of (record.authority ?? []).entries()) look(at, "authority", index, "at");
    for (const [step, at] of Object.entries(record.steps ?? {})) look(at, "steps", step);
    for (const [index, { at }] of (record.samples ?? []).entries()) look(at, "samples", index, "at");
  },
};

/** A date, not a duration such as 36 h. */
const dated = /^\d{4}-/;
