/** Herd numbers for scripts. Field names are stable; docs/json.md describes them. */

import type { HerdReport } from "../herd/index.ts";
import { toJson } from "./json.ts";

export function herdJson(report: HerdReport): string {
  return toJson(report);
}
