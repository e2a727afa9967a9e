/** Where the record of an organ says that something is wrong with it: a finding, an observation or a grade. */
import type { Case, OrganState, Path } from "../cases/index.ts";
import { type Observation, type PlacedOrgan, scaleRanges } from "../knowledge/index.ts";

/** Where the entry says that there is a lesion. */
export function lesionOf(one: Case, organ: PlacedOrgan, state: OrganState): Path | undefined {
  if (state.findings.length > 0) return state.findings[0]?.path;
  const side = state.sides.find((entry) => entry.state.status === "recorded");
  if (side !== undefined) return side.state.path;
  if (state !== one.organ(organ)) return undefined;
  for (const [key, definition] of Object.entries(organ.definition.observations ?? {})) {
    const below = lesionIn(state.entry?.[key], definition);
    if (below !== undefined) return [...state.path, key, ...below];
  }
  const grade = Object.entries(state.entry?.grades ?? {}).find(([id, value]) => value > normalGrade(id));
  return grade === undefined ? undefined : [...state.path, "grades", grade[0]];
}

/** The grade of a normal organ: 0, or the lowest grade of a scale that begins at 1. */
const normalGrade = (id: string): number =>
  Math.max(0, (Object.hasOwn(scaleRanges, id) ? scaleRanges[id]?.range[0] : undefined) ?? 0);

function lesionIn(value: unknown, definition: Observation): Path | undefined {
  const isLesion = (part: unknown): boolean => {
    if (typeof part === "number") return part > 0;
    if (definition.normal === undefined || part === undefined || part === null) return false;
    return [part].flat().some((word) => word !== definition.normal);
  };
  if (definition.parts === undefined) return isLesion(value) ? [] : undefined;
  const part = Object.entries((value ?? {}) as Record<string, unknown>).find(([, entry]) => isLesion(entry));
  return part === undefined ? undefined : [part[0]];
}
