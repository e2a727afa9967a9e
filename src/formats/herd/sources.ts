/** What must be known to read herd numbers, and who says so, each said once. */
import { clusterLimits, intervalMethods, sourceLine } from "../../knowledge/index.ts";
import { marked } from "../page/memory-mark.ts";
import { markOf } from "./prevalence.ts";
import type { HerdNumbers } from "./strata.ts";

/** Notes on herd indices. */
export function herdNotes({ scores }: HerdNumbers): string[] {
  const indices = scores.flatMap((one) => (one.n === 0 ? [] : one.indices));
  const notes = new Set(
    indices.flatMap(({ title, class: named, population, note }) => [
      ...(note === undefined ? [] : [`${title}: ${note}`]),
      ...(named === null || population === undefined
        ? []
        : [`${title}: classes were made from ${population}.`]),
    ]),
  );
  if (indices.some((index) => index.no_class !== undefined))
    notes.add(
      "no class: classes of herd indices are given only for pigs drawn at random or whole groups and, where they were made from slaughter batches, only for slaughtered pigs.",
    );
  return [...notes];
}

/** Indicators, scales and intervals with their citations. */
export function herdSources(report: HerdNumbers): string[] {
  const cited = new Map<string, string>();
  for (const one of report.estimates)
    if (one.source !== null) cited.set(one.indicator, `${marked(one.title, markOf(one))}: ${one.source}`);
  for (const one of report.scores)
    cited.set(one.scale, `${marked(one.title, one.confidence)}: ${one.source}`);
  return [...cited.values(), ...methodSources(report), ...clusterSource(report)];
}

/** Citations of the intervals that are shown. */
export function methodSources({ estimates, scores, combined = [] }: HerdNumbers): string[] {
  const used = new Set<string>();
  for (const { examined, method, true_prevalence: truth } of estimates) {
    if (examined > 0 && method !== null) used.add(method);
    if (truth !== undefined) used.add(truth.method);
  }
  if (combined.some(({ refused }) => refused === null)) used.add("thinnest-stratum");
  for (const { mean_interval: mean, median_interval: median, bootstrap, at_or_above: grades } of scores) {
    if (typeof mean?.lower === "number") used.add(mean.method);
    if (typeof median?.lower === "number") used.add(median.method);
    if (typeof bootstrap?.lower === "number") used.add(bootstrap.method);
    for (const { method } of grades ?? []) if (typeof method === "string") used.add(method);
  }
  return [...intervalMethods].flatMap(([id, { title, source }]) =>
    used.has(id) ? [`Interval, ${marked(title, source.confidence)}: ${source.cite}`] : [],
  );
}

/** Who drew the line for pens, when it was met. */
function clusterSource({ estimates }: HerdNumbers): string[] {
  const met = estimates.some(
    ({ clusters, notes = [] }) =>
      clusters?.too_few === true || notes.some((note) => note.includes("taken as drawn singly")),
  );
  const { fewest, pigs_each: each, source } = clusterLimits;
  return met
    ? [`Pens: fewer than ${fewest} are too few, and ${each} pigs a pen are marked: ${sourceLine(source)}`]
    : [];
}
