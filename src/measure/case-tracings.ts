/** The tracings that a case names for the organs that can be measured: the snout section and the lungs. */
import { dirname, resolve } from "node:path";
import type { Case, Path } from "../cases/index.ts";
import { organById } from "../knowledge/index.ts";
import { type Measured, measureTracing } from "./measure.ts";

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

/** Measures a tracing of a case; one that shows nothing of the organ it stands under is a problem. */
export function measureCaseTracing(one: Case, { organ, tracing, path }: CaseTracing): Measured {
  const measured = measureTracing(tracing, resolve(dirname(one.file), tracing));
  if (!measured.ok) return measured;
  const { snout, lungs } = measured.measurement;
  if ((organ === "respiratory.lungs" ? lungs : snout) !== null) return measured;
  const wanted = organ === "respiratory.lungs" ? "lobe-left-cranial" : "cavity-left";
  const message = `${path.join(".")} names this tracing, but it shows nothing of that organ (no outline such as ${wanted}); name the right file.`;
  return { ok: false, problems: [{ kind: "other-organ", file: tracing, line: 0, column: 0, message }] };
}
