/** Herd numbers as one tidy table: a row an estimate. Column names are stable; docs/json.md describes them. */
import type { CombinedEstimate, Estimate, HerdReport, HerdScores, Stratum } from "../../herd/index.ts";
import { listing } from "../../words/listing.ts";
import { type CsvCell, csv } from "../page/csv.ts";

const head = [
  "measure",
  "id",
  "title",
  "farm",
  "visit",
  "group",
  "age_class",
  "basis",
  "examined",
  "not_examined",
  "affected",
  "value",
  "lower",
  "upper",
  "unit",
  "level",
  "method",
  "confidence",
  "source",
  "note",
  "one_sided",
  "one_sided_limit",
  "head",
  "clusters",
  "design_effect",
  "effective_size",
  "not_graded",
  "of",
] as const;

type Row = { readonly [column in (typeof head)[number]]?: CsvCell };

/** Shares are 0 to 1 and not rounded; what is not known, or has no limits, is empty. */
export const herdCsv = (report: HerdReport): string =>
  csv(
    head,
    herdRows(report).map((row) => head.map((column) => row[column] ?? null)),
  );

export const herdRows = ({ estimates, scores, combined = [] }: HerdReport): Row[] => [
  ...estimates.flatMap(estimateRows),
  ...combined.map(combinedRow),
  ...scores.flatMap(scoreRows),
];

/** What must be known to read a share, with why drawn pigs stand for no group. */
export const notesOf = ({ why, groups = [], notes = [] }: Estimate): string[] => [
  ...(why === null ? [] : [`of these pigs, because ${why}`]),
  ...(groups.length === 0
    ? []
    : [
        `each group is weighted by its head count: ${listing(groups.map(({ group, head }) => `${group ?? "no group"} ${head}`))}`,
      ]),
  ...notes,
];

const place = ({ farm, visit, folder, group, age_class }: Stratum): Row => ({
  farm: farm ?? null,
  visit: visit ?? folder ?? null,
  group: group ?? null,
  age_class: age_class ?? null,
});

function estimateRows(one: Estimate): Row[] {
  const { true_prevalence: truth, one_sided: limit, population, clusters } = one;
  const proportion: Row = {
    ...shareRow(one),
    measure: "proportion",
    note: notesOf(one).join("; ") || null,
    one_sided: limit?.limit ?? null,
    one_sided_limit: limit?.value ?? null,
    head: population?.head ?? one.groups?.reduce((sum, { head: pigs }) => sum + pigs, 0) ?? null,
    clusters: clusters?.number ?? null,
    design_effect: clusters?.design_effect ?? null,
    effective_size: clusters?.effective_size ?? one.effective_size ?? null,
  };
  if (truth === undefined) return [proportion];
  const corrected: Row = {
    ...shareRow(one),
    measure: "true_prevalence",
    value: truth.prevalence,
    lower: truth.lower,
    upper: truth.upper,
    method: truth.method,
    note: [...notesOf(one), ...(truth.withheld === null ? [] : [truth.withheld])].join("; ") || null,
  };
  return [proportion, corrected];
}

const combinedRow = (one: CombinedEstimate): Row => ({
  ...shareRow(one),
  measure: "combined",
  group: one.groups.map(({ group }) => group ?? "").join("; "),
  note: one.refused,
  head: one.population,
  effective_size: one.effective_size ?? null,
});

const shareRow = (one: Estimate | CombinedEstimate): Row => ({
  id: one.indicator,
  title: one.title,
  ...place(one.stratum),
  basis: one.basis,
  examined: one.examined,
  not_graded: one.not_graded,
  not_examined: one.not_examined,
  affected: one.affected,
  of: one.reach,
  value: one.proportion,
  lower: one.lower,
  upper: one.upper,
  unit: "share",
  level: one.level,
  method: one.method,
  confidence: one.confidence,
  source: one.source,
});

/** Mean, median, the bootstrap where there is one, and the share at or above each grade. */
function scoreRows(one: HerdScores): Row[] {
  const { mean_interval: mean, median_interval: median, bootstrap } = one;
  const common: Row = {
    id: one.scale,
    title: one.title,
    ...place(one.stratum),
    basis: one.basis,
    examined: one.n,
    not_graded: one.not_graded,
    not_examined: one.not_examined,
    of: one.reach,
    affected: one.affected?.pigs ?? null,
    unit: one.unit ?? "points",
    level: one.level ?? null,
    confidence: one.confidence,
    source: one.source,
  };
  const limits = (found: typeof mean): Row => ({
    lower: found?.lower ?? null,
    upper: found?.upper ?? null,
    method: found?.method ?? null,
    note: found?.reason ?? null,
  });
  return [
    { ...common, measure: "mean", value: one.mean, ...limits(mean) },
    ...(bootstrap === undefined
      ? []
      : [
          {
            ...common,
            measure: "mean_bootstrap",
            value: one.mean,
            ...limits(bootstrap),
            note: bootstrap.reason ?? `seed ${bootstrap.seed}, ${bootstrap.resamples} resamples`,
          },
        ]),
    { ...common, measure: "median", value: one.median, ...limits(median) },
    ...(one.at_or_above ?? []).map(({ grade, pigs, share, lower, upper, method, notes }) => ({
      ...common,
      measure: `share_at_or_above_${grade}`,
      affected: pigs,
      value: share,
      lower: lower ?? null,
      upper: upper ?? null,
      unit: "share",
      method: method ?? null,
      note: notes === undefined ? null : notes.join("; "),
    })),
  ];
}
