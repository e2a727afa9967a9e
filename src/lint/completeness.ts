/** Of the organs due, how many were examined: the count that stands under every case and visit. */
import type { Case } from "../cases/index.ts";
import { isExcused } from "../record/index.ts";
import { ownCopy } from "../words/own-copy.ts";

/** Counts of organs. due = examined + not_examined + not_assessable + skipped. */
export interface OrganCounts {
  due: number;
  /** Normal or described, whether organ by organ or by system. */
  examined: number;
  /** Of the examined, those covered only by the word `normal` for a whole system. */
  by_system: number;
  /** Not examined, with a reason: of their own, or one that the visit gives for all of its pigs. */
  not_examined: number;
  /** Looked for but not to be judged, with the cause. */
  not_assessable: number;
  /** Blank, or not examined without a reason. */
  skipped: number;
}

export interface Completeness extends OrganCounts {
  readonly case: string;
  readonly file: string;
  /** The carcass was closed on suspicion: no organ was due. */
  readonly closed?: true;
}

export interface VisitCompleteness extends OrganCounts {
  readonly visit: string;
  readonly file: string;
  readonly cases: number;
  /** How many of them were closed on suspicion; no organ of them was due. */
  readonly closed?: number;
}

/** Counts the organs due of one case. */
export function completeness(one: Case): Completeness {
  const counts = noOrgans();
  for (const organ of one.due) {
    const state = one.organ(organ);
    counts.due++;
    if (state.status === "normal" || state.status === "recorded") counts.examined++;
    else if (state.status === "not_examined" && state.reason !== undefined) counts.not_examined++;
    else if (state.status === "blank" && isExcused(one, organ)) counts.not_examined++;
    else if (state.status === "not_assessable" && (state.because !== undefined || state.reason !== undefined))
      counts.not_assessable++;
    else counts.skipped++;
    if (state.bySystem) counts.by_system++;
  }
  const closed = one.record.closed === undefined ? {} : { closed: true as const };
  return { case: ownCopy(one.id), file: one.file, ...counts, ...closed };
}

/** The sum over cases. */
export function addCounts(counts: readonly OrganCounts[]): OrganCounts {
  const sum = noOrgans();
  for (const one of counts) for (const key of keys) sum[key] += one[key];
  return sum;
}

const keys = ["due", "examined", "by_system", "not_examined", "not_assessable", "skipped"] as const;

const noOrgans = (): OrganCounts => ({
  due: 0,
  examined: 0,
  by_system: 0,
  not_examined: 0,
  not_assessable: 0,
  skipped: 0,
});
