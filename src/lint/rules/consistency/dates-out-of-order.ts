import { isAfter, type Moment, moment, type Path, quantity } from "../../../cases/index.ts";
import type { CaseRule } from "../../rule.ts";

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
  summary:
    "Signs, death, opening and sampling follow each other in time, and the opening is not before the visit.",
  protects:
    "Autolysis, incubation and treatment are reckoned from these times; a swapped pair makes every one of them wrong.",
  source: { cite: "order of events; common practice", confidence: "common-practice" },
  bad: { case: "opened: {at: 2026-04-20T08:00}" },
  good: { case: "opened: {at: 2026-04-20T10:00}" },
  check(one, report) {
    const death = event(["death", "at"], "death", one.record.death?.at);
    const opened = event(["opened", "at"], "opening", one.record.opened?.at);
    const onset = event(["selection", "onset"], "onset of signs", one.record.selection?.onset);
    const visit = event(["opened", "at"], "visit", one.visit?.record.date);
    const order = (first: Event | undefined, second: Event | undefined): void => {
      if (first !== undefined && second !== undefined && isAfter(first.at, second.at))
        report(
          `${second.path.join(".")}: the ${second.name} (${second.text}) lies before the ${first.name} (${first.text}). Correct one of them.`,
          second.path,
        );
    };
    order(onset, death);
    order(death, opened);
    if (death === undefined) order(onset, opened);
    order(visit, opened);
    const treated = one.record.selection?.treated;
    const last =
      typeof treated === "object"
        ? event(["selection", "treated", "last"], "last treatment", treated.last)
        : undefined;
    if (last !== undefined && death !== undefined && isAfter(last.at, death.at))
      report(
        `selection.treated.last: the last treatment (${last.text}) lies after the death (${death.text}). Correct one of them.`,
        last.path,
      );
    for (const [index, sample] of (one.record.samples ?? []).entries()) {
      const taken = event(["samples", index, "at"], `sample ${sample.id}`, sample.at);
      // Blood is taken in life, so only what needs an open carcass is held against the opening.
      if (
        taken !== undefined &&
        opened !== undefined &&
        !/-tube$/.test(sample.into ?? "") &&
        isAfter(opened.at, taken.at)
      )
        report(
          `samples[${index}].at: ${taken.name} (${taken.text}) was taken before the pig was opened (${opened.text}). Correct one of them.`,
          taken.path,
        );
    }
  },
};

/** A moment of the case; a duration such as an onset of 36 h is no moment and has no order to be in. */
function event(path: Path, name: string, text: string | undefined): Event | undefined {
  const at = quantity("duration", text) === undefined ? moment(text) : undefined;
  return at === undefined || text === undefined ? undefined : { path, name, text, at };
}
