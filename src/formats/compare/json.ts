/** A comparison for scripts. Field names are stable; docs/compare.md describes them. */
import type { CompareReport, FarmsReport } from "../../compare/index.ts";
import { outputJson } from "../page/json.ts";

export const compareJson = (report: CompareReport | FarmsReport): string => outputJson("compare", 1, report);
