/** Herd numbers for scripts. Field names are stable; docs/json.md describes them. */
import type { HerdReport } from "../../herd/index.ts";
import type { SnoutReading } from "../../reading/index.ts";
import { outputJson } from "../page/json.ts";

/** @param snouts the reading of the snouts; left out where none was examined */
export const herdJson = (report: HerdReport, snouts: readonly SnoutReading[]): string =>
  outputJson("herd", 1, { ...report, ...(snouts.length > 0 && { snout_reading: snouts }) });
