/** What is known of the diseases; not among what index.ts gives out, so that linting does not load it. */
import { disease_criteria as criteria } from "../generated/knowledge/disease_criteria.ts";
import { diseases as files } from "../generated/knowledge/diseases.ts";
import type { Disease, DiseaseCriteria } from "../generated/knowledge.types.ts";

export type {
  Confirmation,
  Criterion,
  Disease,
  DiseaseCriteria,
  Statement,
} from "../generated/knowledge.types.ts";

export const diseases: ReadonlyMap<string, Disease> = new Map(files.map((one) => [one.id, one]));

export const diseaseCriteria: readonly DiseaseCriteria[] = criteria;
