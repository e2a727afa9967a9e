/** What a visit says of its pigs: which were chosen for their signs, what they share, where they come from; and its groups. */
import { type Case, isUnborn, type Visit } from "../cases/index.ts";
import { selectionRules, signFamilies } from "../knowledge/index.ts";
import { plainName } from "../words/plain-name.ts";
import { fact } from "./fact.ts";

export const showsSigns = (one: Case): boolean => one.signs.some((sign) => sign !== "none");

/** Pigs chosen for signs that they show. Aborted litters are counted by abortion-set-small, with their dead mates. */
export const clinicalPigs = fact((visit: Visit): readonly Case[] => {
  const isOfAbortion = visit.cases.some(({ ageClass }) => ageClass === "aborted");
  return visit.cases.filter(
    (one) =>
      one.record.selection?.basis === "clinical" &&
      showsSigns(one) &&
      !(isOfAbortion && isUnborn(one.ageClass)),
  );
});

/** Clinical pigs in bunches; two pigs whose signs have a family in common stand in the same bunch. */
export const syndromes = fact((visit: Visit): readonly (readonly Case[])[] => {
  let bunches: { pigs: Case[]; families: Set<string> }[] = [];
  for (const pig of clinicalPigs(visit)) {
    const families = new Set(signFamiliesOf(pig));
    const met = bunches.filter((bunch) => [...families].some((family) => bunch.families.has(family)));
    bunches = [
      ...bunches.filter((bunch) => !met.includes(bunch)),
      {
        pigs: [...met.flatMap((bunch) => bunch.pigs), pig],
        families: new Set([...met.flatMap((bunch) => [...bunch.families]), ...families]),
      },
    ];
  }
  return bunches.map(({ pigs }) => pigs);
});

/** The signs of some pigs, each once. */
export const signsOf = (pigs: readonly Case[]): string[] => [
  ...new Set(pigs.flatMap((pig) => pig.signs).filter((sign) => sign !== "none")),
];

export interface Origin {
  readonly name: string;
  readonly pigs: number;
}

/** @returns undefined with too few pigs, with more than one origin, with unknown ones, or where the visit says why */
export function oneOrigin(visit: Visit, kind: "pen" | "litter"): Origin | undefined {
  const pigs = clinicalPigs(visit);
  if (!visit.complete || visit.record.pigs?.few !== undefined) return undefined;
  if (pigs.length < selectionRules.pigs_per_syndrome) return undefined;
  const places = new Map<string, string>();
  for (const { record } of pigs) {
    const place = record.pig?.[kind];
    const group = record.pig?.group;
    if (place === undefined || (kind === "pen" && group === undefined)) return undefined;
    // A room of one pen gives no choice.
    if (kind === "pen" && visit.farm?.record.groups?.[group ?? ""]?.pens === 1) return undefined;
    const written = kind === "pen" ? `${place} of ${group}` : `${place}`;
    const name = plainName(written);
    places.set(name, places.get(name) ?? written);
  }
  const [name] = places.values();
  return places.size === 1 && name !== undefined ? { name, pigs: pigs.length } : undefined;
}

export type GroupOfVisit = NonNullable<Visit["record"]["groups"]>[string];

/** The groups that the visit saw, with their name. */
export const groupsOf = fact((visit: Visit): readonly (readonly [string, GroupOfVisit])[] =>
  Object.entries(visit.record.groups ?? {}),
);

export const submissionSource = {
  cite: "submission guidelines: Animal Health Laboratory, University of Guelph; NDSU Veterinary Diagnostic Laboratory (group size, numbers sick and dead, first day)",
  confidence: "verified",
} as const;

/** The families (respiratory, nervous, ...) of its signs, in the order of the vocabulary. */
export const signFamiliesOf = fact((one: Case): readonly string[] =>
  one.signs.length === 0 ? [] : signFamilies(one.signs),
);
