import { organs } from "../../../knowledge/index.ts";
import { statesOf } from "../../../record/index.ts";
import type { CaseRule } from "../../rule.ts";

export const freshYetAutolysed: CaseRule = {
  id: "fresh-yet-autolysed",
  scope: "case",
  family: "consistency",
  level: "warning",
  summary: "A carcass called fresh is not autolysed in two systems or more.",
  protects: "The state of the carcass decides which tests are worth their money.",
  source: { cite: "common practice", confidence: "common-practice" },
  bad: {
    case: "lymphoid: {thymus: {not_assessable: {because: autolysed, why: soft}}}\nintestine: {jejunum: {not_assessable: {because: autolysed, why: green}}}",
  },
  good: {
    case: "opened: {state: slight-autolysis}\nlymphoid: {thymus: {not_assessable: {because: autolysed, why: soft}}}\nintestine: {jejunum: {not_assessable: {because: autolysed, why: green}}}",
  },
  check(one, report) {
    if (one.record.opened?.state !== "fresh") return;
    const autolysed = organs.filter((organ) =>
      statesOf(one, organ).some(
        ({ because, findings }) =>
          because === "autolysed" || findings.some(({ finding }) => finding.process === "autolysis"),
      ),
    );
    if (new Set(autolysed.map((organ) => organ.system)).size > 1)
      report(
        `opened.state: fresh, yet ${autolysed.map((organ) => organ.id).join(", ")} are autolysed. Write state: slight-autolysis, or worse.`,
        ["opened", "state"],
      );
  },
};
