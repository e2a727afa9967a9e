/** The order of the knife: the steps of a necropsy, and which organs are looked at in each; not loaded where nobody asks for it. */
import { knife } from "../generated/knowledge/knife.ts";
import type { KnifeStep, Source } from "../generated/knowledge.types.ts";
import { organById, type PlacedOrgan } from "./index.ts";

/** A step with its place in the order. */
export interface NecropsyStep extends Omit<KnifeStep, "organs"> {
  readonly id: string;
  readonly organs: readonly PlacedOrgan[];
}

/** The steps of a pig's necropsy, the first first; every organ belongs to one of them. */
export const necropsySteps: readonly NecropsyStep[] = Object.entries(knife.steps).map(([id, step]) => ({
  ...step,
  id,
  organs: step.organs.flatMap((organ) => organById(organ) ?? []),
}));

/** Every organ in the order in which the knife comes to it. */
export const organsByKnife: readonly PlacedOrgan[] = necropsySteps.flatMap(({ organs }) => organs);

export const knifeSource: Source = knife.source;
export const knifeSources: ReadonlyMap<string, Source> = new Map(Object.entries(knife.sources));
