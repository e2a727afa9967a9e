import { isAfter, moment } from "../../../cases/index.ts";
import { askedOf, isOpen, isPending, resultsOfCase } from "../../../record/index.ts";
import { listing } from "../../../words/listing.ts";
import { type CaseRule, practice } from "../../rule.ts";

export const answeredTooEarly: CaseRule = {
  id: "answered-too-early",
  scope: "case",
  family: "diagnosis",
  level: "warning",
  silent: "never",
  summary: "A case that is called answered waits for nothing: no test is open, and no diagnosis is pending.",
  protects: "A closed case is not opened again for the result that comes next week.",
  lookAlike:
    "A test that was given up: take it out of for:, or write the result as not-testable with the reason in its note.",
  source: practice("a case is closed once its results are in; common practice"),
  bad: {
    case: "diagnosis: {answered: 2026-04-28}",
    results:
      "entries: [{sample: 01-A, test: histology, text: lymphocytic cuffs around bronchi}, {sample: 01-B, test: pcr, agent: prrsv, interpretation: negative}]",
  },
  good: {
    case: "diagnosis: {answered: 2026-04-28}",
    results:
      "entries: [{sample: 01-A, test: histology, text: lymphocytic cuffs around bronchi}, {sample: 01-B, test: pcr, agent: prrsv, interpretation: negative}, {sample: 01-B, test: culture, interpretation: not-testable, note: leaked}]",
  },
  check(one, report) {
    const answered = one.record.diagnosis?.answered;
    if (answered === undefined) return;
    const path = ["diagnosis", "answered"];
    if (isPending(one)) {
      report(
        "diagnosis.answered: the case is closed, and its diagnosis is still pending. Write the cause, or that none was found, or take answered: out.",
        path,
      );
      return;
    }
    const open = askedOf(one).filter(isOpen);
    if (open.length > 0) {
      const shown = open.slice(0, 4).map(({ sample, test }) => `${test} of ${sample.id}`);
      report(
        `diagnosis.answered: the case is closed, and no result is there of ${listing(open.length > 4 ? [...shown, `${open.length - 4} more`] : shown)}. Write them into results.yaml, not-testable where nothing will come, or take answered: out.`,
        path,
      );
      return;
    }
    const on = moment(answered);
    const later = resultsOfCase(one).find(({ date }) => {
      const came = moment(date);
      return on !== undefined && came !== undefined && isAfter(came, on);
    });
    if (later !== undefined)
      report(
        `diagnosis.answered: the case was closed on ${answered}, and ${later.entry.test} of ${listing(later.samples)} came on ${later.date}. Read it, and write the day on which all was in.`,
        path,
      );
  },
};
