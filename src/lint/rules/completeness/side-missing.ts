import { formatPath, pathOf } from "../../../cases/index.ts";
import { organs } from "../../../knowledge/index.ts";
import { exampleOf, missingObservations, missingTitle } from "../../../record/index.ts";
import { type CaseRule, practice } from "../../rule.ts";

const paired = organs.filter(({ definition }) => definition.form === "paired");

export const sideMissing: CaseRule = {
  id: "side-missing",
  scope: "case",
  family: "completeness",
  level: "error",
  summary: "Both sides of a paired organ are recorded, and every part of a side.",
  protects: "One kidney, one ear or one concha of four is not the organ; sums over sides need both.",
  lookAlike:
    "A side that is not there, or that nobody saw: both are answers, right: {not_assessable: {because: absent, why: …}} or right: {not_examined: why}.",
  source: practice(
    "common practice of snout scoring: sums add four conchae and the septum (Polloni et al. 2018)",
  ),
  bad: { case: "urinary: {kidneys: {left: normal, right: }}" },
  good: { case: "urinary: {kidneys: {left: normal, right: {not_examined: sent whole to the laboratory}}}" },
  check(one, report) {
    for (const organ of paired) {
      const { status, sides } = one.organ(organ);
      if (status === "blank" || sides.length === 0) continue;
      for (const side of ["left", "right"] as const)
        if ((sides.find((entry) => entry.side === side)?.state.status ?? "blank") === "blank")
          report(
            `${organ.id}: the ${side} side is blank. Write ${side}: normal, a finding, or not_examined with the reason.`,
            [...pathOf(organ.id), side],
            "key",
          );
    }
    for (const missing of missingObservations(one)) {
      if (missing.organ.definition.form === "lobed") continue;
      const isSide = missing.observation === "left" || missing.observation === "right";
      if (missing.part === undefined && !isSide) continue;
      report(
        `${formatPath(missing.path)}: ${missingTitle(missing)} is blank. Write ${exampleOf(missing)}.`,
        missing.path,
        "key",
      );
    }
  },
};
