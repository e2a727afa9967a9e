/** The rows of the picture of proportions: a stratum each, and groups taken together. */
import type { CombinedEstimate, Estimate, HerdReport } from "../../herd/index.ts";
import { percent, percentRange } from "../../words/percent.ts";
import { visible } from "../../words/visible.ts";
import { groupWords, placeWords } from "./strata.ts";

export interface Row {
  readonly one: Estimate | CombinedEstimate;
  readonly place: string;
  /** Group and age class; cut where there is no room. */
  readonly name: string;
  /** How the pigs were chosen; never cut. */
  readonly basis: string;
  readonly share: Shown;
  /** Affected and examined, the share, its limits; blank where there are none. */
  readonly numbers: readonly [string, string, string];
}

interface Shown {
  readonly value: number | null;
  readonly lower: number | null;
  readonly upper: number | null;
}

/** The rows of each indicator, in the order of the report. */
export function plotRows(report: HerdReport): Row[][] {
  const indicators = new Map<string, Row[]>();
  for (const one of report.estimates)
    indicators.set(keyOf(one), [...(indicators.get(keyOf(one)) ?? []), rowOf(one)]);
  for (const one of report.combined ?? []) {
    const rows = indicators.get(keyOf(one)) ?? [];
    if (one.refused === null) indicators.set(keyOf(one), withCombined(rows, rowOf(one)));
  }
  return [...indicators.values()];
}

const keyOf = ({ indicator, title }: Estimate | CombinedEstimate): string =>
  JSON.stringify([indicator, title]);

/** Groups taken together stand below the groups of their place. */
function withCombined(rows: readonly Row[], combined: Row): Row[] {
  const last = rows.findLastIndex(({ place }) => place === combined.place);
  const at = last < 0 ? rows.length : last + 1;
  return [...rows.slice(0, at), combined, ...rows.slice(at)];
}

function rowOf(one: Estimate | CombinedEstimate): Row {
  const combined = "groups" in one;
  const truth = combined ? undefined : one.true_prevalence;
  const { lower, upper } = truth ?? one;
  const corrected = one.examined === 1 ? null : truth?.prevalence;
  const share = { value: corrected === undefined ? one.proportion : corrected, lower, upper };
  return {
    one,
    place: visible(placeWords(one.stratum).join(" · ")),
    name: visible([...(combined ? ["combined"] : []), ...groupWords(one.stratum)].join(" ")),
    basis: visible(one.basis ?? "unrecorded"),
    share,
    numbers: numbersOf(one, share),
  };
}

function numbersOf(one: Estimate | CombinedEstimate, { value, lower, upper }: Shown): Row["numbers"] {
  const { affected, examined, not_graded } = one;
  const counted = `${affected}/${examined}`;
  if (examined === 0) return [counted, "", not_graded > 0 ? "not graded" : "not examined"];
  const limits = lower === null || upper === null ? withoutLimits(one) : percentRange(lower, upper);
  return [counted, value === null ? "" : percent(value), limits];
}

function withoutLimits(one: Estimate | CombinedEstimate): string {
  if (one.examined === 1) return "one pig";
  if (one.reach === "these-pigs") return "these pigs";
  return one.true_prevalence === undefined ? "all examined" : "withheld";
}
