import { type Case, formatPath, type Path, pathOf, valueAt } from "../../../cases/index.ts";
import { factsSource } from "../../../knowledge/index.ts";
import { type RequiredFact, requiredFacts } from "../../../record/index.ts";
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
