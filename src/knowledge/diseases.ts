/** What is known of the diseases; not among what index.ts gives out, so that linting does not load it. */
import { diseases as files } from "../generated/knowledge/diseases.ts";
import type { Disease } from "../generated/knowledge.types.ts";

export type { Confirmation, Disease, DiseaseExample, Statement } from "../generated/knowledge.types.ts";

export const diseases: ReadonlyMap<string, Disease> = new Map(files.map((one) => [one.id, one]));
