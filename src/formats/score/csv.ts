/** Scores as a tidy table: one row a pig and scale. Column names are stable; docs/json.md describes them. */
import type { Archive } from "../../cases/index.ts";
import type { ScoredCase } from "../../score/index.ts";
import { csv } from "../page/csv.ts";

const head =
  "case,file,farm,visit,group,scale,value,max,class,confidence,missing,reason,least,greatest".split(",");

/** Lists (missing observations) are joined by a semicolon; what is not recorded is empty. */
export function scoreCsv(scored: readonly ScoredCase[], archive: Archive): string {
  const cases = new Map(archive.cases.map((one) => [one.file, one]));
  const rows = scored.flatMap(({ case: id, file, scores }) => {
    const one = cases.get(file);
    const where = [one?.farm?.id ?? null, one?.visit?.id ?? null, one?.record.pig?.group ?? null];
    return scores.map(({ scale, value, max, class: named, confidence, missing, reason, bounds }) => [
      id,
      file,
      ...where,
      scale,
      value,
      max,
      named,
      confidence,
      missing.length === 0 ? null : missing.join("; "),
      reason ?? null,
      bounds?.[0] ?? value,
      bounds?.[1] ?? value,
    ]);
  });
  return csv(head, rows);
}
