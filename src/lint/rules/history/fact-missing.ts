import { pathOf, valueAt } from "../../../cases/index.ts";
import { factsSource } from "../../../knowledge/index.ts";
import type { CaseRule } from "../../rule.ts";
import { requiredFacts } from "../../shared/required-facts.ts";

export const factMissing: CaseRule = {
  id: "fact-missing",
  scope: "case",
  family: "history",
  level: "error",
  summary:
    "The facts that the protocol asks for are written down: pig, selection, death, opening and the look for alarm signs.",
  protects:
    "Missing history is the fault laboratories name first; it decides the test set and cannot be asked of a dead pig.",
  source: factsSource,
  bad: { case: "pig: {age: }" },
  good: { case: "pig: {age: 8 wk}" },
  check(one, report) {
    for (const { id, fact } of requiredFacts(one)) {
      const path = pathOf(id);
      if (valueAt(one.record, path) === undefined)
        report(`${id} is blank. Write ${fact.title}, such as ${fact.write}.`, path, "key");
    }
  },
};
