/** Diseases for which the authority had a sample tested, and it was negative. */
import { excludedBy } from "../alarms/index.ts";
import type { Disease } from "../knowledge/diseases.ts";
import { alarmPatterns } from "../knowledge/index.ts";
import type { Evidence, Subject } from "../patterns/index.ts";
import { fact } from "../record/index.ts";
import { placeKey } from "./place-key.ts";
import { casesOf, visitOf } from "./statements.ts";

/** The entries that exclude a disease, each once; of a disease and of all its forms. */
export function testedNegative({ id, form_of: whole = id }: Disease, subject: Subject): readonly Evidence[] {
  const entries = exclusions(subject).flatMap(({ diseases, entry }) =>
    diseases.includes(whole) ? [entry] : [],
  );
  return [...new Map(entries.map((entry) => [placeKey(entry), entry])).values()];
}

interface Exclusion {
  readonly diseases: readonly string[];
  readonly entry: Evidence;
}

const exclusions = fact((subject: Subject): readonly Exclusion[] =>
  [...new Set([subject, ...casesOf(subject)])].flatMap((one) =>
    alarmPatterns.flatMap(({ id, rules_out: diseases }) => {
      const entry = entryOf(id, one);
      return entry === undefined ? [] : [{ diseases, entry }];
    }),
  ),
);

/** The entry with its place: in the file itself or in its visit. */
function entryOf(alarm: string, one: Subject): Evidence | undefined {
  const entry = excludedBy(alarm, one);
  if (entry === undefined) return undefined;
  return [one, visitOf(one)].flatMap((subject) => {
    const index = subject?.record.authority?.indexOf(entry) ?? -1;
    return subject === undefined || index < 0
      ? []
      : [{ subject, path: ["authority", index], text: entry.sample ?? "", beforeKnife: false }];
  })[0];
}
