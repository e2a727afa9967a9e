/** The observations that an organ of a case must have, and what is missing of them. */
import { type Case, type OrganState, type Path, pathOf } from "../cases/index.ts";
import { type Observation, organs, type PlacedOrgan } from "../knowledge/index.ts";
import { fact } from "./fact.ts";

/** Something that should have been observed and was not. */
export interface MissingObservation {
  readonly organ: PlacedOrgan;
  readonly observation: string;
  readonly definition: Observation;
  /** The lobe, side or concha that is missing; undefined when the whole observation is. */
  readonly part: string | undefined;
  readonly path: Path;
}

/** Every required observation of the organs of a case that is missing, whole or in part. */
export const missingObservations = fact((one: Case): readonly MissingObservation[] => {
  if (one.protocol.observations === "optional") return [];
  return organs.flatMap((organ) =>
    Object.entries(organ.definition.observations ?? {}).flatMap(([key, definition]) =>
      missing(one, organ, key, definition),
    ),
  );
});

function missing(
  one: Case,
  organ: PlacedOrgan,
  observation: string,
  definition: Observation,
): MissingObservation[] {
  const state = one.organ(organ);
  const path = state.bySystem ? state.path : [...pathOf(organ.id), observation];
  const value = state.entry?.[observation];
  const none: MissingObservation = { organ, observation, definition, part: undefined, path };
  if (value === undefined || value === null) return isRequired(one, organ, definition, state) ? [none] : [];
  if (definition.parts === undefined) return [];
  const parts = value as Record<string, unknown>;
  return Object.keys(definition.parts)
    .filter((part) => !Object.hasOwn(parts, part) || parts[part] === null)
    .map((part) => ({ ...none, part, path: [...path, part] }));
}

function isRequired(one: Case, organ: PlacedOrgan, definition: Observation, state: OrganState): boolean {
  const { required, required_in: classes } = definition;
  if (required === undefined) return false;
  if (classes !== undefined && (one.ageClass === undefined || !classes.includes(one.ageClass))) return false;
  if (state.status === "recorded") return true;
  return state.status === "normal" && required === "always" && one.due.includes(organ);
}

/** What to call the missing thing: `the left caudal lobe`, or the title of the observation. */
export function missingTitle({ definition, part }: MissingObservation): string {
  return part === undefined ? definition.title : `the ${definition.parts?.[part] ?? part}`;
}

/** An example of what could be written for an observation. */
export function exampleOf({ definition, observation, part }: MissingObservation): string {
  const value =
    definition.kind === "choice" || definition.kind === "choices"
      ? (definition.values ?? []).join(" | ")
      : `${definition.range?.[0] ?? 0} to ${definition.range?.[1] ?? ""}`;
  return `${part ?? observation}: ${value}`;
}
