import { formatPath, valueAt } from "../../../cases/index.ts";
import type { CaseRule } from "../../rule.ts";

export const pleurisyNoneAndMore: CaseRule = {
  id: "pleurisy-none-and-more",
  scope: "case",
  family: "consistency",
  level: "error",
  summary: "A side has no pleurisy, or some; not both in one list.",
  protects: "The score takes one of the two, and it may be the wrong one.",
  source: { cite: "common practice", confidence: "common-practice" },
  bad: { case: "respiratory: {pleura: {pleurisy: {left: [none, cranioventral], right: none}}}" },
  good: {
    case: "respiratory: {pleura: {pleurisy: {left: [cranioventral, dorsocaudal-focal], right: none}}}",
  },
  check(one, report) {
    for (const side of ["left", "right"]) {
      const path = ["respiratory", "pleura", "pleurisy", side];
      const value = valueAt(one.record, path);
      if (Array.isArray(value) && value.includes("none") && value.some((word) => word !== "none"))
        report(
          `${formatPath(path)}: none stands beside ${value.filter((word) => word !== "none").join(" and ")}. Keep one.`,
          path,
        );
    }
  },
};
