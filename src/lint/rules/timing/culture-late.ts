import { autolysis } from "../../../knowledge/index.ts";
import type { CaseRule } from "../../rule.ts";
import { reportLate } from "../../shared/late-tests.ts";

export const cultureLate: CaseRule = {
  id: "culture-late",
  scope: "case",
  family: "timing",
  level: "warning",
  trustsTimes: true,
  summary: "Samples for culture and virus isolation are taken before the germs of the gut have spread.",
  protects:
    "Hours after death the germs of the gut are in liver, spleen and blood, and the first agent is overgrown.",
  source: autolysis.source,
  bad: {
    case: "death: {at: 2026-04-19T19:10}\nopened: {at: 2026-04-20T09:40, ambient: 14 °C, state: fresh, note: lay in the cold passage overnight}\nsamples: [{id: 01-A, from: liver_pancreas.liver, into: chilled, for: [culture], at: 2026-04-20T09:50}]",
  },
  good: {
    case: "death: {at: 2026-04-19T23:10}\nopened: {at: 2026-04-20T09:40, ambient: 14 °C, state: fresh}\nsamples: [{id: 01-A, from: liver_pancreas.liver, into: chilled, for: [culture], at: 2026-04-20T09:50}]",
  },
  check(one, report) {
    reportLate(one, report, "culture");
  },
};
