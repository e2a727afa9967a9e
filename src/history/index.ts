/** History: what changed in records, in medical words, and how two people's work on one record comes together. */
export type { Change, RecordKind } from "./changes.ts";
export { kindOfText, mergeRecords } from "./merge.ts";
export { type RecordChange, type RecordVersion, readVersion, recordChanges } from "./records.ts";
export { factLines, recordWords, sentence } from "./sentence.ts";
