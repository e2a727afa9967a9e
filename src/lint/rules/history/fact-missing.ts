import { type Case, formatPath, type Path, pathOf, quantity, valueAt } from "../../../cases/index.ts";
import { type Fact, facts, factsSource, type PlacedOrgan } from "../../../knowledge/index.ts";
import { diedAt, hoursBetween, openedAt } from "../../../record/index.ts";
import { grouped } from "../../../words/grouped.ts";
import { listing } from "../../../words/listing.ts";
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
    for (const [group, facts] of grouped(blank, ({ path }) => groupOf(path, one))) {
      const [first] = facts;
      if (facts.length === 1)
        report(
          `${first.id} is blank. Write ${first.fact.title}, such as ${first.fact.write}.`,
          first.path,
          "key",
        );
      else if (valueAt(one.record, pathOf(group)) === undefined)
        report(`${group} is blank. Write ${written(facts, 0)}, as it was.`, pathOf(group), "key");
      else
        report(
          `${group}: ${listing(facts.map(({ path }) => String(path.at(-1))))} are blank. Write ${written(facts, first.path.length - 1)} there, as it was.`,
          pathOf(group),
          "key",
        );
    }
  },
};

/** The keys above a fact; where the file has not even the first of them, all below it is one omission. */
const groupOf = (path: Path, one: Case): string =>
  formatPath(path.slice(0, valueAt(one.record, path.slice(0, 1)) === undefined ? 1 : -1));

/** `alarm_check: {at_knife: {petechiae: none}}`, from a depth on. */
const written = (facts: readonly RequiredFact[], depth: number): string =>
  [...grouped(facts, ({ path }) => path[depth])]
    .map(([key, [first, ...others]]) =>
      first.path.length === depth + 1
        ? first.fact.write
        : `${key}: {${written([first, ...others], depth + 1)}}`,
    )
    .join(", ");

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
