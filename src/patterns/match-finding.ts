/** Recorded findings and measured parts against a pattern. */
import { type Case, pathOf } from "../cases/index.ts";
import { type Condition, organById, type WantedFinding, type WantedWords } from "../knowledge/index.ts";
import { findingsOf, type PlacedFinding } from "../record/index.ts";
import type { Evidence } from "./evidence.ts";

/** The findings that a pattern looks for, called an artefact or not; undefined when there is none. */
export function finding(wanted: WantedFinding, one: Case): Evidence[] | undefined {
  const all = findingsOf(one);
  if (all.length === 0) return undefined;
  const found = all.filter(
    (placed) =>
      wanted.organs.includes(placed.organ.id) &&
      wanted.process.includes(placed.finding.process) &&
      (wanted.site === undefined || namesSite(wanted.site, placed)) &&
      !(wanted.elsewhere !== undefined && namesSite(wanted.elsewhere, placed)) &&
      (wanted.with === undefined ||
        (hasWord(wanted.with, placed) && !(wanted.agrees === true && saysOtherwise(wanted.with, placed))) ||
        (wanted.unsaid === true && saysNothingOf(wanted.with, placed))) &&
      !(wanted.unless !== undefined && hasWord(wanted.unless, placed)),
  );
  if (found.length === 0) return undefined;
  return found.map((placed) => findingEvidence(placed, one));
}

/** A finding as it is shown. */
export const findingEvidence = (placed: PlacedFinding, one: Case): Evidence => ({
  subject: one,
  path: placed.path,
  text: describe(placed),
  beforeKnife: placed.organ.system === "external",
});

const namesSite = (words: readonly string[], { finding: { site, note } }: PlacedFinding): boolean =>
  [site, note].some((text) => words.some((word) => text?.toLowerCase().includes(word)));

function hasWord(words: WantedWords, { finding: { ...described } }: PlacedFinding): boolean {
  return Object.entries(words).some(([key, list]: [string, readonly string[]]) =>
    list.includes(String((described as Record<string, unknown>)[key])),
  );
}

/** Whether a finding has another word than those that are asked for. */
const saysOtherwise = (words: WantedWords, { finding: { ...described } }: PlacedFinding): boolean =>
  Object.entries(words).some(([key, list]: [string, readonly string[]]) => {
    const word = (described as Record<string, unknown>)[key];
    return word !== undefined && !list.includes(String(word));
  });

/** Whether a finding is silent about all that is asked of its words. */
const saysNothingOf = (words: WantedWords, { finding: { ...described } }: PlacedFinding): boolean =>
  Object.keys(words).every((key) => (described as Record<string, unknown>)[key] === undefined);

/** `lymphoid.spleen enlargement, black, friable` */
function describe({
  organ,
  finding: { process, colour, consistency, exudate, shape, certainty },
}: PlacedFinding): string {
  const words = [colour, consistency, exudate, shape].filter((word) => word !== undefined && word !== "none");
  const called = certainty === "artefact" ? ["called an artefact"] : [];
  return [`${organ.id} ${process}`, ...words, ...called].join(", ");
}

/** A part of an observation above a number, such as a lobe with any consolidation. */
export function grade(wanted: NonNullable<Condition["grade"]>, one: Case): Evidence[] | undefined {
  const organ = organById(wanted.organ);
  const value: unknown = organ === undefined ? undefined : one.organ(organ).entry?.[wanted.observation];
  const parts: unknown[] = typeof value === "object" && value !== null ? Object.values(value) : [value];
  if (!parts.some((part) => typeof part === "number" && part > wanted.above)) return undefined;
  const id = `${wanted.organ}.${wanted.observation}`;
  return [{ subject: one, path: pathOf(id), text: id, beforeKnife: false }];
}
