import { formatPath } from "../../../cases/index.ts";
import { placedStates } from "../../../record/index.ts";
import { type CaseRule, practice } from "../../rule.ts";

export const notExaminedWithoutReason: CaseRule = {
  id: "not-examined-without-reason",
  scope: "case",
  family: "completeness",
  level: "error",
  summary: "An organ that was not examined says why.",
  protects:
    "The reason tells whether the gap can be mended: the skull was left closed, or dogs had been at the carcass.",
  lookAlike: "Nothing: no time, no saw and no light are reasons as good as any, as long as they are written.",
  source: practice("common practice of systematic necropsy: every system has a state other than blank"),
  bad: { case: "stomach: {pars_oesophagea: {not_examined: }}" },
  good: { case: "stomach: {pars_oesophagea: {not_examined: stomach sent closed for toxicology}}" },
  check(one, report) {
    const told = new Set<string>();
    for (const { state } of placedStates(one)) {
      if (state.status !== "not_examined" || state.reason !== undefined) continue;
      const name = formatPath(state.path);
      const key = state.path[0] === "not_examined" ? "because" : "not_examined";
      // One word stands for the rest of a system.
      if (!told.has(name))
        report(
          `${name}: not examined, and no reason is given. Write one, such as ${key}: skull left closed.`,
          [...state.path, key],
          "key",
        );
      told.add(name);
    }
  },
};
