/** Herd numbers for scripts. Field names are stable; docs/json.md describes them. */
import type { HerdReport } from "../herd/index.ts";

export function herdJson(report: HerdReport): string {
  return `${JSON.stringify(report, null, 2)}\n`;
}
