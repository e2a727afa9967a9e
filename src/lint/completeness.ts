/** Of the organs due, how many were examined: the count that stands under every case and visit. */
import type { Case } from "../cases/index.ts";
import { isExcused, isToldWith } from "../record/index.ts";
import { ownCopy } from "../words/own-copy.ts";

/** Counts of organs. due = examined + not_examined + not_assessable + skipped + wanted_blank. */
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
  /** Blank though they had to be examined, or not examined without a reason. */
  skipped: number;
  /** Blank; they were wanted, and no must. */
  wanted_blank: number;
}

export interface Completeness extends OrganCounts {
  readonly case: string;
  readonly file: string;
  /** The organs that are counted in wanted_blank. */
  readonly wanted_blank_organs?: readonly string[];
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
  const wanted: string[] = [];
  for (const organ of one.due) {
    const state = one.organ(organ);
    counts.due++;
    if (state.status === "normal" || state.status === "recorded") counts.examined++;
    else if (state.status === "not_examined" && state.reason !== undefined) counts.not_examined++;
    else if (state.status === "blank" && isExcused(one, organ)) counts.not_examined++;
    else if (state.status === "not_assessable" && (state.because !== undefined || state.reason !== undefined))
      counts.not_assessable++;
    else if (state.status === "blank" && isToldWith(one, organ)) counts.examined++;
    else if (state.status === "blank" && !one.must.has(organ)) wanted.push(organ.id);
    else counts.skipped++;
    if (state.bySystem && state.status === "normal") counts.by_system++;
  }
  const closed = one.record.closed === undefined ? {} : { closed: true as const };
  counts.wanted_blank = wanted.length;
  const blank = wanted.length === 0 ? {} : { wanted_blank_organs: wanted };
  return { case: ownCopy(one.id), file: one.file, ...counts, ...blank, ...closed };
}

/** The sum over cases. */
export function addCounts(counts: readonly OrganCounts[]): OrganCounts {
  const sum = noOrgans();
  for (const one of counts) for (const key of keys) sum[key] += one[key];
  return sum;
}

const keys = [
  "due",
  "examined",
  "by_system",
  "not_examined",
  "not_assessable",
  "skipped",
  "wanted_blank",
] as const;

const noOrgans = (): OrganCounts => ({
  due: 0,
  examined: 0,
  by_system: 0,
  not_examined: 0,
  not_assessable: 0,
  skipped: 0,
  wanted_blank: 0,
});
