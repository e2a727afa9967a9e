import { type Case, type Path, pathOf, valueAt } from "../../../cases/index.ts";
import { type Fact, facts, factsSource, type PlacedOrgan } from "../../../knowledge/index.ts";
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
  lookAlike:
    "A thing that nobody knows any more: onset: unknown and treated: unknown are answers, and an estimate will do for age and weight; only blank is asked about.",
  source: factsSource,
  bad: { case: "pig: {age: }" },
  good: { case: "pig: {age: 8 wk}" },
  check(one, report) {
    const blank = requiredFacts(one).filter(({ path }) => valueAt(one.record, path) === undefined);
    for (const [group, facts] of byGroup(blank)) {
      const [first] = facts;
      // A group that is not there at all is one omission.
      if (first !== undefined && facts.length > 1 && valueAt(one.record, pathOf(group)) === undefined)
        report(
          `${group} is blank. Write ${inGroups(group, facts.map(({ fact }) => fact.write).join(", "))}, as it was.`,
          pathOf(group),
          "key",
        );
      else
        for (const { id, path, fact } of facts)
          report(`${id} is blank. Write ${fact.title}, such as ${fact.write}.`, path, "key");
    }
  },
};

function byGroup(facts: readonly RequiredFact[]): Map<string, RequiredFact[]> {
  const groups = new Map<string, RequiredFact[]>();
  for (const fact of facts) {
    const group = fact.id.split(".").slice(0, -1).join(".");
    groups.set(group, [...(groups.get(group) ?? []), fact]);
  }
  return groups;
}

/** `alarm_check: {at_knife: {petechiae: none}}` */
const inGroups = (group: string, entries: string): string =>
  group.split(".").reduceRight((inside, key) => `${key}: {${inside}}`, entries);

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
  if (fact.due_with !== undefined && !one.due.some((organ) => isAmong(organ, fact.due_with))) return false;
  if (fact.manners !== undefined && (manner === undefined || !fact.manners.includes(manner))) return false;
  return true;
}

const isAmong = ({ id, system }: PlacedOrgan, names: readonly string[] = []): boolean =>
  names.includes(id) || names.includes(system);
