/** What is said where one pig is meant and none, or several, were named. */
import { type Case, valueAt } from "../cases/index.ts";
import { isLeftOut, requiredFacts } from "../record/index.ts";
import { count } from "../words/listing.ts";
import { casesHere } from "./case-names.ts";
import { UsageError } from "./usage-error.ts";

/**
 * @param write the command with what stands behind the name of the case
 * @param cases that may be meant
 */
export function nameOneCase(
  write: (file: string) => string,
  cases: readonly Case[] = casesHere(),
): UsageError {
  const open = cases.filter(isIncomplete);
  const [first] = open;
  const such = write(first?.file ?? cases[0]?.file ?? "alder-farm/2026-03-14/pig-03.yaml");
  if (open.length === 1) return new UsageError(`name the case; one is not complete yet: ${such}`);
  const left = open.length > 1 ? ` (${count(open.length, "case")} are not complete yet)` : "";
  const made = cases.length === 0 ? "; carcase new makes it" : "";
  return new UsageError(`name the case, such as ${such}${left}${made}`);
}

const isIncomplete = (one: Case): boolean =>
  requiredFacts(one).some(({ path }) => valueAt(one.record, path) === undefined) ||
  [...one.must].some((organ) => isLeftOut(one, organ));
