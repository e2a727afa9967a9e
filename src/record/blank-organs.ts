/** The organs due of which a case says nothing, system by system, and those for which a reason is given elsewhere. */
import type { Case } from "../cases/index.ts";
import { interpretationWords, organs, type PlacedOrgan, systems } from "../knowledge/index.ts";
import { wordIn } from "../notes/index.ts";
import { fact } from "./fact.ts";
import { closedOrgans, organsBehind } from "./named-organs.ts";
import { placedStates } from "./organs.ts";

export interface BlankSystem {
  readonly id: string;
  readonly title: string;
  /** Those that may not be left out. */
  readonly must: readonly PlacedOrgan[];
  readonly wanted: readonly PlacedOrgan[];
  /** Two or more organs were due, and not one of the system is recorded. */
  readonly whole: boolean;
}

const inSystems = systems.map(({ id, title }) => ({
  id,
  title,
  all: organs.filter(({ system }) => system === id),
}));

/** The systems with organs that are due, blank, and left without any reason. */
export const blankSystems = fact((one: Case): readonly BlankSystem[] => {
  const blank = one.due.filter((organ) => one.organ(organ).status === "blank" && !isExcused(one, organ));
  if (blank.length === 0) return [];
  return inSystems.flatMap(({ id, title, all }) => {
    const here = blank.filter(({ system }) => system === id);
    if (here.length === 0) return [];
    const must = here.filter((organ) => one.must.has(organ));
    return {
      id,
      title,
      must,
      wanted: here.filter((organ) => !must.includes(organ)),
      whole: here.length > 1 && all.every((organ) => one.organ(organ).status === "blank"),
    };
  });
});

/** Whether the visit says why this organ was left alone in every pig, or another organ why its cavity stayed closed. */
export const isExcused = (one: Case, organ: PlacedOrgan): boolean => excused(one).has(organ);

const excused = fact((one: Case): ReadonlySet<PlacedOrgan> => {
  const said = one.visit?.record.pigs?.left_closed;
  const closed = placedStates(one)
    .filter(({ state }) => state.status === "not_examined")
    .map(({ state }) => state.reason ?? "")
    .filter((reason) => wordIn(reason, interpretationWords.skull_closed) !== undefined);
  return new Set([...(said === undefined ? [] : closedOrgans(said)), ...closed.flatMap(organsBehind)]);
});
