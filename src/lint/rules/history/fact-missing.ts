import { type Case, type Path, pathOf, valueAt } from "../../../cases/index.ts";
import { type Fact, facts, factsSource } from "../../../knowledge/index.ts";
import type { CaseRule } from "../../rule.ts";

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

/** A fact that a case needs, by its protocol, age class, selection basis and manner of death. */
interface RequiredFact {
  readonly id: string;
  readonly path: Path;
  readonly fact: Fact;
}

const all: readonly RequiredFact[] = [...facts].map(([id, fact]) => ({ id, path: pathOf(id), fact }));

/** The facts due in a case, in the order of facts.yaml. */
export function requiredFacts(one: Case): RequiredFact[] {
  const wanted = one.protocol.facts;
  const isAll = wanted.includes("all");
  return all.filter(({ id, fact }) => (isAll || wanted.includes(id)) && applies(fact, one));
}

function applies(fact: Fact, one: Case): boolean {
  const { ageClass, record } = one;
  const basis = record.selection?.basis;
  const manner = record.death?.manner;
  if (fact.only !== undefined && (ageClass === undefined || !fact.only.includes(ageClass))) return false;
  if (fact.except !== undefined && ageClass !== undefined && fact.except.includes(ageClass)) return false;
  if (fact.bases !== undefined && (basis === undefined || !fact.bases.includes(basis))) return false;
  if (fact.manners !== undefined && (manner === undefined || !fact.manners.includes(manner))) return false;
  return true;
}
