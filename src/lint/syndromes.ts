/** The pigs of a visit that were chosen for their signs, and which of them share a syndrome. */
import { type Case, isUnborn, type Visit } from "../cases/index.ts";
import { signFamilies } from "../knowledge/index.ts";

export const showsSigns = (one: Case): boolean => one.signs.some((sign) => sign !== "none");

/** Pigs chosen for signs that they show. Aborted litters are counted by abortion-set-small, with their dead mates. */
export const clinicalPigs = (visit: Visit): Case[] => {
  const isOfAbortion = visit.cases.some(({ ageClass }) => ageClass === "aborted");
  return visit.cases.filter(
    (one) =>
      one.record.selection?.basis === "clinical" &&
      showsSigns(one) &&
      !(isOfAbortion && isUnborn(one.ageClass)),
  );
};

/** Clinical pigs in bunches; two pigs whose signs have a family in common stand in the same bunch. */
export function syndromes(visit: Visit): Case[][] {
  let bunches: { pigs: Case[]; families: Set<string> }[] = [];
  for (const pig of clinicalPigs(visit)) {
    const families = new Set(signFamilies(pig.signs));
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
}

/** The signs of some pigs, each once. */
export const signsOf = (pigs: readonly Case[]): string[] => [
  ...new Set(pigs.flatMap((pig) => pig.signs).filter((sign) => sign !== "none")),
];
