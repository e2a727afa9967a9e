/** The organs due of which a case says nothing, system by system, and those for which a reason is given elsewhere. */
import type { Case } from "../cases/index.ts";
import { interpretationWords, organById, organs, type PlacedOrgan, systems } from "../knowledge/index.ts";
import { wordIn } from "../notes/index.ts";
import { fact } from "./fact.ts";
import { closedOrgans, organsBehind } from "./named-organs.ts";
import { placedStates } from "./organs.ts";

export interface BlankSystem {
  readonly id: string;
  readonly title: string;
  /** Those that may not be left out. */
  readonly must: readonly PlacedOrgan[];
  /** Not one organ of the system is recorded, and nothing is written of any. */
  readonly whole: boolean;
}

const inSystems = systems.map(({ id, title }) => ({
  id,
  title,
  all: organs.filter(({ system }) => system === id),
}));

/** The systems with organs that must be examined, are blank, and are left without any reason. */
export const blankSystems = fact((one: Case): readonly BlankSystem[] => {
  const blank = [...one.must].filter((organ) => isLeftOut(one, organ));
  if (blank.length === 0) return [];
  return inSystems.flatMap(({ id, title, all }) => {
    const must = blank.filter(({ system }) => system === id);
    if (must.length === 0) return [];
    return {
      id,
      title,
      must,
      whole: all.map((organ) => one.organ(organ)).every(({ status, entry }) => status === "blank" && !entry),
    };
  });
});

/** Whether nothing is said of an organ, here or elsewhere. */
export const isLeftOut = (one: Case, organ: PlacedOrgan): boolean =>
  one.organ(organ).status === "blank" && !isExcused(one, organ) && !isToldWith(one, organ);

/**
 * Whether an organ of which nothing stands here is seen together with one that is recorded: the pleura tells of the
 * pleural space.
 */
export const isToldWith = (one: Case, organ: PlacedOrgan): boolean =>
  one.organ(organ).entry === undefined &&
  (organ.definition.told_with ?? []).some((id) => {
    const other = organById(id);
    const status = other === undefined ? "blank" : one.organ(other).status;
    return status === "normal" || status === "recorded";
  });

/** Nodes that are asked of a pig with fever for their blood alone. */
const bloodyNodes = ["lymphoid.gastrohepatic_nodes", "lymphoid.renal_nodes"];

/** Whether the visit says why this organ was left alone in every pig, another organ why its cavity stayed closed, or the look for alarm signs that there was no blood. */
export const isExcused = (one: Case, organ: PlacedOrgan): boolean => excused(one).has(organ);

const excused = fact((one: Case): ReadonlySet<PlacedOrgan> => {
  const said = one.visit?.record.pigs?.left_closed;
  const closed = placedStates(one)
    .filter(({ state }) => state.status === "not_examined")
    .map(({ state }) => state.reason ?? "")
    .filter((reason) => wordIn(reason, interpretationWords.skull_closed) !== undefined);
  const brain = organById("nervous.brain");
  const isSkullTold =
    brain !== undefined && ["not_examined", "not_assessable"].includes(one.organ(brain).status);
  const isBloodDenied = one.record.alarm_check?.at_knife?.bloody_nodes === "none";
  const answered = [...(isSkullTold ? ["nervous.meninges"] : []), ...(isBloodDenied ? bloodyNodes : [])];
  return new Set([
    ...answered.map(organById).filter((organ) => organ !== undefined),
    ...(said === undefined ? [] : closedOrgans(said)),
    ...closed.flatMap(organsBehind),
  ]);
});
