/** Measurements as one tidy table: a value a line, with its unit, and what is missing where there is none. */
import type { Measurements, Sided, Value } from "../../measure/index.ts";
import { type CsvCell, csv } from "../page/csv.ts";
import { portablePath } from "../page/portable-path.ts";

const head = ["case", "organ", "tracing", "sha256", "part", "measure", "value", "unit", "missing"];

interface Row {
  readonly part: string;
  readonly measure: string;
  readonly value: number | null;
  readonly unit: string;
  readonly missing?: readonly string[];
}

/** Values are not rounded; numbers have a point. */
export function measureCsv({ measurements }: Measurements): string {
  const rows = measurements.flatMap((measurement) => {
    const { owner, tracing, sha256 } = measurement;
    const common = [owner?.case ?? null, owner?.organ ?? null, portablePath(tracing), sha256];
    return rowsOf(measurement).map(({ part, measure, value, unit, missing = [] }): CsvCell[] => [
      ...common,
      part,
      measure,
      value,
      unit,
      missing.join(" "),
    ]);
  });
  return csv(head, rows);
}

function rowsOf({ outlines, snout, lungs }: Measurements["measurements"][number]): Row[] {
  const rows = outlines.flatMap(({ part, area_mm2, perimeter_mm }): Row[] => [
    ...(area_mm2 === null ? [] : [{ part, measure: "area", value: area_mm2, unit: "mm2" }]),
    { part, measure: "perimeter", value: perimeter_mm, unit: "mm" },
  ]);
  const row = (part: string, measure: string, { value, missing }: Value, unit: string): Row => ({
    part,
    measure,
    value,
    unit,
    missing,
  });
  if (snout !== null) {
    const sided = (measure: string, { left, right, total }: Sided, unit: string): Row[] => [
      row("left", measure, left, unit),
      row("right", measure, right, unit),
      row("total", measure, total, unit),
    ];
    rows.push(
      ...sided("perimeter_ratio", snout.perimeter_ratio, "1"),
      ...sided("concha_area_fraction", snout.concha_area_fraction, "1"),
      ...sided("free_area_percent", snout.free_area_percent, "%"),
      row("", "asymmetry", snout.asymmetry, "1"),
      row("septum", "septum_deviation", snout.septum_deviation, "mm"),
    );
  }
  for (const [lobe, value] of Object.entries(lungs?.affected_percent ?? {}))
    rows.push(row(lobe, "affected_percent", value, "%"));
  return rows;
}
