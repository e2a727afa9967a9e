/** The facts besides the organs that a case needs. */
import { type Case, type Path, pathOf, quantity, valueAt } from "../cases/index.ts";
import { type Fact, facts, type PlacedOrgan } from "../knowledge/index.ts";
import { diedAt, hoursBetween, openedAt } from "./times.ts";

/** A fact that a case needs, by its protocol, age class, selection basis and manner of death. */
export interface RequiredFact {
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
  if (fact.told_by_visit !== undefined && one.visit?.record[fact.told_by_visit] !== undefined) return false;
  const told = fact.told_by;
  if (told !== undefined && ageClass !== undefined && told.classes.includes(ageClass))
    if (valueAt(record, pathOf(told.fact)) !== undefined) return false;
  if (fact.later_than !== undefined) {
    const hours = hoursBetween(diedAt(one), openedAt(one));
    if (hours !== undefined && hours <= (quantity("duration", fact.later_than) ?? 0)) return false;
  }
  if (fact.manners !== undefined && (manner === undefined || !fact.manners.includes(manner))) return false;
  return true;
}

const isAmong = ({ id, system }: PlacedOrgan, names: readonly string[] = []): boolean =>
  names.includes(id) || names.includes(system);
