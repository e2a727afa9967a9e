/** The statements of a disease, or the criteria of one, against a visit or a case: met, with what; not met; or nobody looked. */
import type { Case, Visit } from "../cases/index.ts";
import { type Condition, organById } from "../knowledge/index.ts";
import { asksHerd, type Evidence, matchCondition, organsAsked, type Subject } from "../patterns/index.ts";
import { placeKey } from "./place-key.ts";

export type Answer =
  | { readonly is: "met"; readonly evidence: readonly Evidence[] }
  /** What it asks about was looked at, and is not so. */
  | { readonly is: "not-met" }
  /** Of the organs that it asks about, none was looked at. */
  | { readonly is: "not-looked-at"; readonly organs: readonly string[] };

/** How a record answers a condition: a visit by itself or by any of its pigs, a case by itself. */
export function answerOf(condition: Condition, subject: Subject): Answer {
  const evidence = evidenceFor(condition, subject);
  if (evidence !== undefined) return { is: "met", evidence: distinct(evidence) };
  const organs = [...new Set(organsAsked(condition))];
  return organs.length > 0 && !organs.some((id) => casesOf(subject).some((one) => isLookedAt(one, id)))
    ? { is: "not-looked-at", organs }
    : { is: "not-met" };
}

/** The cases that a work-up is about. */
export const casesOf = (subject: Subject): readonly Case[] =>
  "cases" in subject ? subject.cases : [subject];

/** Whether somebody wrote down how the organ was. */
function isLookedAt(one: Case, id: string): boolean {
  const organ = organById(id);
  return organ !== undefined && ["normal", "recorded"].includes(one.organ(organ).status);
}

function evidenceFor(condition: Condition, subject: Subject): readonly Evidence[] | undefined {
  const ofPigs = evidenceOfPigs(condition, casesOf(subject));
  const visit = asksHerd(condition) ? visitOf(subject) : undefined;
  // What the visit tells of the herd is shown for a case as well, and is met by it no further than the case itself says.
  if (visit === undefined || (subject !== visit && ofPigs?.length !== 0)) return ofPigs;
  const ofVisit = matchCondition(ofPigsToo(condition), visit);
  return ofVisit === undefined ? ofPigs : [...ofVisit, ...(ofPigs ?? [])];
}

const asked = new WeakMap<Condition, Condition>();

/** What must not be is not in any pig of the visit either: a visit by itself has no finding, sign or class of a pig. */
function ofPigsToo(condition: Condition): Condition {
  const known = asked.get(condition) ?? denyingPigs(condition);
  asked.set(condition, known);
  return known;
}

function denyingPigs(condition: Condition): Condition {
  const { all, any, none, at_least: some } = condition;
  if (all !== undefined) return { all: each(all, ofPigsToo) };
  if (any !== undefined) return { any: each(any, ofPigsToo) };
  if (some !== undefined) return { at_least: { count: some.count, of: each(some.of, ofPigsToo) } };
  if (none === undefined) return condition;
  return {
    none: each(none, (one) => (asksHerd(one) ? ofPigsToo(one) : { pigs: { at_least: 1, with: one } })),
  };
}

const each = (
  [first, ...others]: NonNullable<Condition["all"]>,
  changed: (one: Condition) => Condition,
): NonNullable<Condition["all"]> => [changed(first), ...others.map(changed)];

/** The visit of a case, with that case alone; a visit itself. */
export const visitOf = (subject: Subject): Visit | undefined => {
  if ("cases" in subject) return subject;
  return subject.visit && { ...subject.visit, cases: [subject], complete: false, excluded: [] };
};

function evidenceOfPigs(condition: Condition, cases: readonly Case[]): readonly Evidence[] | undefined {
  const matches = cases.map((one) => matchCondition(condition, one));
  const shown = matches.flatMap((match) => match ?? []);
  if (shown.length > 0) return shown;
  if (matches.every((match) => match === undefined)) return undefined;
  const organs = organsAsked(condition);
  if (organs.length === 0) return [];
  // That something is not there counts where no pig has it, and somebody looked.
  return matches.every((match) => match !== undefined) &&
    organs.some((id) => cases.some((one) => isLookedAt(one, id)))
    ? []
    : undefined;
}

/** Each place once. */
const distinct = (evidence: readonly Evidence[]): readonly Evidence[] => [
  ...new Map(evidence.map((one) => [placeKey(one), one])).values(),
];
