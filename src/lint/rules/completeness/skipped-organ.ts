import { pathOf } from "../../../cases/index.ts";
import { type CaseRule, practice } from "../../rule.ts";
import { skippedSystems } from "./skipped-system.ts";

export const skippedOrgan: CaseRule = {
  id: "skipped-organ",
  scope: "case",
  family: "completeness",
  level: "error",
  summary:
    "Every organ due is normal, described, not examined with a reason, or not assessable with the cause.",
  protects:
    "An organ that was forgotten cannot be told from a normal one a week later; blank is never normal.",
  source: practice(
    "common practice of systematic necropsy; organs due follow from protocol, age class, sex and signs",
  ),
  bad: { case: "liver_pancreas: {pancreas: }" },
  good: { case: "liver_pancreas: {pancreas: {not_examined: lost with the gut}}" },
  check(one, report) {
    for (const organ of one.due) {
      if (one.organ(organ).status !== "blank") continue;
      if (skippedSystems(one).some(({ id }) => id === organ.system)) continue;
      const often = organ.definition.forgotten === true ? " (often forgotten)" : "";
      report(
        `${organ.id} is blank and was due${often}. Write normal, a finding, or not_examined with the reason.`,
        pathOf(organ.id),
        "key",
      );
    }
  },
};
