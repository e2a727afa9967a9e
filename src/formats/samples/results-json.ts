/** What is open and what arrived, for scripts. Field names are stable; docs/json.md describes them. */
import type { VisitResults } from "../../results/index.ts";
import { outputJson } from "../page/json.ts";
import { portablePath } from "../page/portable-path.ts";

export const resultsJson = (visits: readonly VisitResults[], today: string): string =>
  outputJson("samples-results", 1, {
    today,
    visits: visits.map(({ file, arrived, ...one }) => ({
      ...one,
      file: portablePath(file),
      arrived: arrived.map((result) => ({ ...result, file: portablePath(result.file) })),
    })),
  });
