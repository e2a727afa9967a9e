/** Measurements for scripts. Field names are stable; docs/json.md describes them. */
import type { Measurements } from "../../measure/index.ts";
import { outputJson } from "../page/json.ts";
import { portablePath } from "../page/portable-path.ts";

export function measureJson({ measurements, problems }: Measurements): string {
  return outputJson("measure", 1, {
    measurements: measurements.map(({ owner, tracing, ...measured }) => ({
      ...owned(owner),
      tracing: portablePath(tracing),
      ...measured,
    })),
    problems: problems.map(({ owner, kind, message, file, line, column }) => ({
      ...owned(owner),
      problem: kind,
      message,
      tracing: portablePath(file),
      line,
      column,
    })),
  });
}

const owned = (owner: Measurements["measurements"][number]["owner"]) => ({
  case: owner?.case ?? null,
  file: owner === null ? null : portablePath(owner.file),
  organ: owner?.organ ?? null,
});
