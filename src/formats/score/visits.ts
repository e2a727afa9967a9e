/** What the tables of scores share: cases by visit, and the scale behind each score. */
import type { Archive, Case } from "../../cases/index.ts";
import type { Scale } from "../../knowledge/index.ts";
import { type CaseScore, type ScoredCase, scaleNamed } from "../../score/index.ts";

export interface ScoredVisit {
  readonly title: string;
  readonly rows: readonly ScoredRow[];
}

/** One pig with its scores, by the scale itself: two practices may use one name for different scales. */
export interface ScoredRow {
  readonly one: Case;
  readonly scores: ReadonlyMap<Scale, CaseScore>;
}

/** In a name numbers go by their value: p2 before p10. */
const byName = new Intl.Collator("en", { numeric: true });

/** The pigs of each visit by their names; those without a visit together. */
export function scoredVisits(scored: readonly ScoredCase[], { cases }: Archive): ScoredVisit[] {
  const byFile = new Map(scored.map((one) => [one.file, one]));
  const visits = new Map<string, { title: string; rows: ScoredRow[] }>();
  for (const one of cases) {
    const key = one.visit?.folder ?? "";
    const title = one.visit === undefined ? "Cases without a visit" : `visit ${one.visit.id}`;
    const block = visits.get(key) ?? { title, rows: [] };
    const scores = (byFile.get(one.file)?.scores ?? []).flatMap((score) => {
      const scale = scaleNamed(one, score.scale);
      return scale === undefined ? [] : [[scale, score] as const];
    });
    block.rows.push({ one, scores: new Map(scores) });
    visits.set(key, block);
  }
  for (const { rows } of visits.values()) rows.sort((a, b) => byName.compare(a.one.id, b.one.id));
  return [...visits.values()];
}

/** Every scale that was used, in the order of its first use. */
export const usedScales = (visits: readonly ScoredVisit[]): Scale[] => [
  ...new Set(visits.flatMap(({ rows }) => rows.flatMap(({ scores }) => [...scores.keys()]))),
];
