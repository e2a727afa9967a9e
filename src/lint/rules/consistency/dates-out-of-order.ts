import {
  type Case,
  formatPath,
  isAfter,
  type Moment,
  moment,
  type Path,
  quantity,
} from "../../../cases/index.ts";
import { sampleRules } from "../../../knowledge/index.ts";
import {
  type DatedEvent,
  isDeathTooEarly,
  isOpeningTooLate,
  stepsBeforeDeath,
  takenBeforeOpening,
  takenTooLate,
  yearSlips,
} from "../../../record/index.ts";
import { listing } from "../../../words/listing.ts";
import { type CaseRule, practice, type Report } from "../../rule.ts";

interface Event {
  readonly path: Path;
  readonly name: string;
  readonly text: string;
  readonly at: Moment;
}

export const datesOutOfOrder: CaseRule = {
  id: "dates-out-of-order",
  scope: "case",
  family: "consistency",
  level: "error",
  summary: "Signs, death, opening, steps and sampling follow each other in time, and within days.",
  protects:
    "Autolysis, incubation and treatment are reckoned from these times; a swapped pair makes every one of them wrong.",
  lookAlike:
    "Blood drawn in life, swabs and fluid taken before the knife, the freezer: all are passed. Where only a day is known write the day; it stands before and after every hour of it.",
  source: practice("order of events; common practice"),
  bad: { case: "opened: {at: 2026-04-20T08:00}" },
  good: { case: "opened: {at: 2026-04-20T10:00}" },
  check(one, report) {
    const death = event(["death", "at"], "death", one.record.death?.at);
    const opened = event(["opened", "at"], "opening", one.record.opened?.at);
    const onset = event(["selection", "onset"], "onset of signs", one.record.selection?.onset);
    // A mistyped year is named by year-off-visit, and says nothing about the order.
    const slips = yearSlips(one).map(({ path }) => formatPath(path));
    const order = (first: Event | undefined, second: Event | undefined): void => {
      if (first === undefined || second === undefined || !isAfter(first.at, second.at)) return;
      const name = formatPath(second.path);
      if (!slips.includes(formatPath(first.path)) && !slips.includes(name))
        report(
          `${name}: the ${second.name} (${second.text}) comes before the ${first.name} (${first.text}). Correct one of them.`,
          second.path,
        );
    };
    order(onset, death);
    order(death, opened);
    order(opened ?? death, event(["closed", "at"], "closing of the carcass", one.record.closed?.at));
    if (death === undefined) order(onset, opened);
    const treated = one.record.selection?.treated;
    const last =
      typeof treated === "object"
        ? event(["selection", "treated", "last"], "last treatment", treated.last)
        : undefined;
    if (last !== undefined && death !== undefined && isAfter(last.at, death.at))
      report(
        `selection.treated.last: the last treatment (${last.text}) comes after the death (${death.text}). Correct one of them.`,
        last.path,
      );
    if (slips.length > 0) return;
    reportTaken(one, report);
    reportMonth(one, report);
  },
};

/** Steps and samples before the opening, before the death or long after; where several are, the opening itself, once. */
function reportTaken(one: Case, report: Report): void {
  const early = takenBeforeOpening(one);
  const opened = one.record.opened?.at;
  if (isOpeningTooLate(one))
    report(
      `opened.at: ${listing(early.map(({ name }) => name))} are dated before the pig was opened (${opened}), the first in the list at ${early[0]?.text}. Correct the time of the opening, or those of what was taken.`,
      ["opened", "at"],
    );
  else for (const found of early) reportEach(found, `before the pig was opened (${opened})`, report);
  for (const found of stepsBeforeDeath(one))
    reportEach(found, `before the pig died (${one.record.death?.at})`, report);
  reportTogether(takenTooLate(one), `days or weeks after the pig was opened (${opened})`, report);
}

function reportEach({ path, name, text }: DatedEvent, when: string, report: Report): void {
  const verb = path[0] === "steps" ? "was done" : "was taken";
  report(`${formatPath(path)}: ${name} (${text}) ${verb} ${when}. Correct one of them.`, path);
}

/** One slip on a row of samples is one line. */
function reportTogether(found: readonly DatedEvent[], when: string, report: Report): void {
  const [first] = found;
  if (first === undefined) return;
  if (found.length === 1) reportEach(first, when, report);
  else
    report(
      `${formatPath(first.path)}: ${listing(found.map(({ name }) => name))} are dated ${when}. Correct the day or the month.`,
      first.path,
    );
}

function reportMonth(one: Case, report: Report): void {
  if (!isDeathTooEarly(one) || isOpeningTooLate(one)) return;
  const { death, opened } = one.record;
  report(
    `death.at: the pig died (${death?.at}) more than ${sampleRules.apart.carcass} before it was opened (${opened?.at}), and its state is not that of so old a carcass. Correct the day or the month of one of them; for a carcass that was kept frozen write opened.state: frozen.`,
    ["death", "at"],
  );
}

/** A moment of the case; a duration such as an onset of 36 h is no moment and has no order to be in. */
function event(path: Path, name: string, text: string | undefined): Event | undefined {
  const at = quantity("duration", text) === undefined ? moment(text) : undefined;
  return at === undefined || text === undefined ? undefined : { path, name, text, at };
}
