/** Measures tracings by the list: files that were named, and those that cases name. */
import { dirname, resolve } from "node:path";
import type { Case, Path } from "../cases/index.ts";
import { type CaseTracing, caseTracings, type MeasurableOrgan } from "./case-tracings.ts";
import { type Measured, type Measurement, measureTracing } from "./measure.ts";
import type { Problem } from "./problem.ts";

/** Where a tracing was named. */
interface Owner {
  /** Id of the case. */
  readonly case: string;
  readonly file: string;
  readonly organ: MeasurableOrgan;
  /** Where the organ stands in the case. */
  readonly path: Path;
}

/** A measurement, with the case that names its tracing; `owner` is null for a file that was named itself. */
interface OwnedMeasurement extends Measurement {
  readonly owner: Owner | null;
}

interface OwnedProblem extends Problem {
  readonly owner: Owner | null;
}

export interface Measurements {
  readonly measurements: readonly OwnedMeasurement[];
  readonly problems: readonly OwnedProblem[];
}

/**
 * @param files tracings, SVG or GeoJSON, measured in the order of their names
 * @param cases whose turbinates and lungs may name tracings
 */
export function measureAll(files: readonly string[], cases: readonly Case[]): Measurements {
  const measurements: OwnedMeasurement[] = [];
  const problems: OwnedProblem[] = [];
  const add = (measured: Measured, owner: Owner | null): void => {
    if (measured.ok) measurements.push({ ...measured.measurement, owner });
    else problems.push(...measured.problems.map((problem) => ({ ...problem, owner })));
  };
  for (const file of [...files].sort()) add(measureTracing(file), null);
  for (const one of cases)
    for (const named of caseTracings(one)) {
      const { organ, path } = named;
      add(measureCaseTracing(one, named), { case: one.id, file: one.file, organ, path });
    }
  return { measurements, problems };
}

/** Measures a tracing of a case; one that shows nothing of the organ it stands under is a problem. */
function measureCaseTracing(one: Case, { organ, tracing, path }: CaseTracing): Measured {
  const measured = measureTracing(tracing, resolve(dirname(one.file), tracing), one.file);
  if (!measured.ok) return measured;
  const { snout, lungs } = measured.measurement;
  if ((organ === "respiratory.lungs" ? lungs : snout) !== null) return measured;
  const wanted = organ === "respiratory.lungs" ? "lobe-left-cranial" : "cavity-left";
  const message = `${path.join(".")} names this tracing, but it shows nothing of that organ (no outline such as ${wanted}); name the right file.`;
  return { ok: false, problems: [{ kind: "other-organ", file: tracing, line: 0, column: 0, message }] };
}
