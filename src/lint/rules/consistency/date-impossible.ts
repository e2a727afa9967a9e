import { moment, type Path } from "../../../cases/index.ts";
import type { CaseRule } from "../../rule.ts";

export const dateImpossible: CaseRule = {
  id: "date-impossible",
  scope: "case",
  family: "consistency",
  level: "error",
  summary: "Every date is a day of the calendar.",
  protects:
    "The 30th of February is a typing error, and the day that was meant decides about onset and autolysis.",
  source: { cite: "Gregorian calendar, ISO 8601", confidence: "common-practice" },
  bad: { case: "selection: {onset: 2026-02-30}" },
  good: { case: "selection: {onset: 2026-04-19}" },
  check(one, report) {
    const { record } = one;
    const dates: [Path, string | undefined][] = [
      [["selection", "onset"], record.selection?.onset],
      [["death", "at"], record.death?.at],
      [["opened", "at"], record.opened?.at],
      [["authority", "contacted"], record.authority?.contacted],
      ...Object.entries(record.steps ?? {}).map(([step, at]): [Path, string | undefined] => [
        ["steps", step],
        at,
      ]),
      ...(record.samples ?? []).map((sample, index): [Path, string | undefined] => [
        ["samples", index, "at"],
        sample.at,
      ]),
    ];
    for (const [path, text] of dates)
      if (text !== undefined && /^\d{4}-/.test(text) && moment(text) === undefined)
        report(`${path.join(".")}: there is no ${text.slice(0, 10)} in the calendar. Correct the day.`, path);
  },
};
