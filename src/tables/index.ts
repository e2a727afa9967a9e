/** The tables of an export: what they are, what they become, and the dictionary that says what each column means. */
import { cases } from "./cases.ts";
import { findings, observations, organs } from "./organs.ts";
import { results, samples, susceptibilities } from "./samples.ts";
import { estimates, scores } from "./scores.ts";
import type { Table } from "./table.ts";

export { dictionary, dictionaryFile, isDictionary } from "./dictionary.ts";
export { exportFormats, type Piece, type Written, writerOf } from "./formats.ts";
export { keyIn, Pseudonyms } from "./pseudonyms.ts";
export type { Column, Table, TabledFolder } from "./table.ts";

export const tables: readonly Table[] = [
  cases,
  organs,
  findings,
  observations,
  scores,
  samples,
  results,
  susceptibilities,
  estimates,
];
