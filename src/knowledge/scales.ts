/** The scales that ship; not among what index.ts gives out, so that linting does not load them. */
import { anatomy } from "../generated/knowledge/anatomy.ts";
import { scales as files } from "../generated/knowledge/scales.ts";
import type { Scale } from "../generated/knowledge.types.ts";

const order = Object.entries(anatomy.systems).flatMap(([system, { organs }]) =>
  Object.keys(organs).map((key) => `${system}.${key}`),
);

const placeOf = (organ: string): number => (order.includes(organ) ? order.indexOf(organ) : order.length);

/** Scales from the skin inwards: in the order of their organs, then by name; those of the whole pig last. */
export const scales: ReadonlyMap<string, Scale> = new Map(
  files
    .map((scale) => ({ scale, place: placeOf(scale.organ) }))
    .sort((a, b) => a.place - b.place)
    .map(({ scale }) => [scale.id, scale]),
);
