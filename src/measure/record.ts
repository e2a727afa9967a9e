/** A measurement as a case records it under `measured`. */
import { measures } from "../knowledge/index.ts";
import type { MeasurableOrgan } from "./case-tracings.ts";
import type { Measurement } from "./measure.ts";
import type { Sided, Value } from "./values.ts";

/** What stands under `measured`; values that lack an outline are left out. */
export interface MeasuredRecord {
  readonly [key: string]: string | number | Readonly<Record<string, number>>;
}

/**
 * @param tracing the file as the case names it
 * @returns the entry, its figures rounded to the decimals that `carcase measure` shows
 */
export function measuredRecord(
  tracing: string,
  { sha256, snout, lungs }: Measurement,
  organ: MeasurableOrgan,
): MeasuredRecord {
  const record: Record<string, MeasuredRecord[string]> = { tracing, sha256 };
  if (organ === "respiratory.lungs") {
    const shares = rounded(lungs?.affected_percent ?? {}, measures.affected_percent.decimals);
    if (shares !== undefined) record.affected_percent = shares;
    return record;
  }
  if (snout === null) return record;
  for (const key of ["perimeter_ratio", "concha_area_fraction", "free_area_percent"] as const) {
    const values = rounded(sidesOf(snout[key]), measures[key].decimals);
    if (values !== undefined) record[key] = values;
  }
  const { asymmetry, septum_deviation: septum } = snout;
  if (asymmetry.value !== null) record.asymmetry = round(asymmetry.value, measures.asymmetry.decimals);
  if (septum.value !== null)
    record.septum_deviation = `${round(septum.value, measures.septum_deviation.decimals)} mm`;
  return record;
}

const sidesOf = ({ left, right, total }: Sided): Record<string, Value> => ({ left, right, total });

function rounded(
  values: Readonly<Record<string, Value>>,
  decimals: number,
): Record<string, number> | undefined {
  const known = Object.entries(values).flatMap(([key, { value }]): [string, number][] =>
    value === null ? [] : [[key, round(value, decimals)]],
  );
  return known.length === 0 ? undefined : Object.fromEntries(known);
}

/** Rounded half away from zero as `toFixed` does; never -0. */
const round = (value: number, decimals: number): number => Number(value.toFixed(decimals)) + 0;
