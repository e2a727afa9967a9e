import { valueAt } from "../../../cases/index.ts";
import { factsSource } from "../../../knowledge/index.ts";
import type { CaseRule } from "../../rule.ts";
import { requiredFacts } from "../../shared/required-facts.ts";

export const factMissing: CaseRule = {
  id: "fact-missing",
  scope: "case",
  family: "history",
  level: "error",
  summary:
    "The facts that the protocol asks for are recorded: pig, selection, death, opening and the check for alarm signs.",
  protects:
    "Missing history is the fault that laboratories name first; it decides which tests are run, and a dead pig cannot be asked.",
  source: factsSource,
  bad: { case: "pig: {age: }" },
  good: { case: "pig: {age: 8 wk}" },
  check(one, report) {
    for (const { id, path, fact } of requiredFacts(one))
      if (valueAt(one.record, path) === undefined)
        report(`${id} is blank. Write ${fact.title}, such as ${fact.write}.`, path, "key");
  },
};
