/** Sheets of labels that ship, and what a code needs; only those who print labels load them. */
import { label_sheets as data } from "../generated/knowledge/label_sheets.ts";
import type { LabelSheet, Source } from "../generated/knowledge.types.ts";

export type { LabelSheet } from "../generated/knowledge.types.ts";

export const labelSheets: ReadonlyMap<string, LabelSheet> = new Map(Object.entries(data.sheets));
export const labelSheetsSource: Source = data.source;
export const { source: labelCodesSource, ...labelCodes } = data.code;
export type CodeKind = keyof typeof labelCodes;
