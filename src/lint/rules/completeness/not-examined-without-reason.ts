import { formatPath } from "../../../cases/index.ts";
import { organs } from "../../../knowledge/index.ts";
import { statesOf } from "../../../record/index.ts";
import type { CaseRule } from "../../rule.ts";

export const notExaminedWithoutReason: CaseRule = {
  id: "not-examined-without-reason",
  scope: "case",
  family: "completeness",
  level: "error",
  summary: "An organ that was not examined says why.",
  protects:
    "The reason tells whether the gap can be mended: the head was left closed, or the dogs had the carcass.",
  source: {
    cite: "every system has a state other than blank; common practice",
    confidence: "common-practice",
  },
  bad: { case: "stomach: {pars_oesophagea: {not_examined: }}" },
  good: { case: "stomach: {pars_oesophagea: {not_examined: stomach sent closed for toxicology}}" },
  check(one, report) {
    for (const organ of organs)
      for (const state of statesOf(one, organ))
        if (state.status === "not_examined" && state.reason === undefined)
          report(
            `${formatPath(state.path)}: ${organ.definition.title} was not examined, and no reason is given. Write it: not_examined: skull left closed.`,
            [...state.path, "not_examined"],
            "key",
          );
  },
};
