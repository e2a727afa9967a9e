import { autolysis } from "../../../knowledge/index.ts";
import type { CaseRule } from "../../rule.ts";
import { reportLate } from "../../shared/late-tests.ts";

export const toxicologyLate: CaseRule = {
  id: "toxicology-late",
  scope: "case",
  family: "timing",
  level: "warning",
  trustsTimes: true,
  summary: "Samples for toxicology are taken before the poison is gone.",
  protects: "Volatile and unstable poisons vanish and new substances arise; a low value then proves nothing.",
  source: autolysis.source,
  bad: {
    case: "death: {at: 2026-04-17T19:10}\nopened: {at: 2026-04-20T09:40, ambient: 14 °C, state: moderate-autolysis, note: lay in the cold passage overnight}\nsamples: [{id: 01-A, from: liver_pancreas.liver, into: frozen, for: [toxicology], at: 2026-04-20T09:50}, {id: 01-S, from: stomach.stomach_content, into: frozen, for: [archive]}]",
  },
  good: {
    case: "death: {at: 2026-04-19T10:10}\nopened: {at: 2026-04-20T09:40, ambient: 14 °C, state: moderate-autolysis, note: lay in the cold passage overnight}\nsamples: [{id: 01-A, from: liver_pancreas.liver, into: frozen, for: [toxicology], at: 2026-04-20T09:50}, {id: 01-S, from: stomach.stomach_content, into: frozen, for: [archive]}]",
  },
  check(one, report) {
    reportLate(one, report, "toxicology");
  },
};
