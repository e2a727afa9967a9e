/** What is known of the diseases; not among what index.ts gives out, so that linting does not load it. */
import { disease_criteria as criteria } from "../generated/knowledge/disease_criteria.ts";
import { diseases as files } from "../generated/knowledge/diseases.ts";
import { published_outbreaks as published } from "../generated/knowledge/published_outbreaks.ts";
import type { Disease, DiseaseCriteria, PublishedOutbreaks } from "../generated/knowledge.types.ts";

export type {
  Confirmation,
  Criterion,
  Disease,
  DiseaseCriteria,
  Statement,
} from "../generated/knowledge.types.ts";

export const diseases: ReadonlyMap<string, Disease> = new Map(files.map((one) => [one.id, one]));

/** What a published outbreak showed. */
export type PublishedOutbreak = PublishedOutbreaks["outbreaks"][number];

export const publishedOutbreaks: readonly PublishedOutbreak[] = published.outbreaks;

export const diseaseCriteria: readonly DiseaseCriteria[] = criteria;
