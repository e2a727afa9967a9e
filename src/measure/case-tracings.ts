/** The tracings that a case names for the organs that can be measured: the snout section and the lungs. */
import type { Case, Path } from "../cases/index.ts";
import { organById } from "../knowledge/index.ts";

const measurable = ["respiratory.turbinates", "respiratory.lungs"] as const;
export type MeasurableOrgan = (typeof measurable)[number];

export interface CaseTracing {
  readonly organ: MeasurableOrgan;
  /** As written in the case, from its folder. */
  readonly tracing: string;
  /** Where the organ stands in the case. */
  readonly path: Path;
}

/** Turbinates first, then lungs; organs without a tracing are not in the list. */
export function caseTracings(one: Case): CaseTracing[] {
  return measurable.flatMap((organ): CaseTracing[] => {
    const placed = organById(organ);
    if (placed === undefined) return [];
    const { entry, path } = one.organ(placed);
    return entry?.tracing === undefined ? [] : [{ organ, tracing: entry.tracing, path }];
  });
}
