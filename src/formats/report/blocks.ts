/** What a section of a report is made of: the blocks of every command, and figures. */
import type { Audience, ReportResult, ReportWords } from "../../report/index.ts";
import type { Block } from "../page/blocks.ts";
import type { Picture } from "./pictures.ts";

export type ReportBlock = Block | { readonly kind: "figure"; readonly picture: Picture };

export const drawn = (pictures: readonly Picture[]): ReportBlock[] =>
  pictures.map((picture) => ({ kind: "figure", picture }));

/** A section: nothing where there is nothing to tell. */
export type Part = (report: ReportResult, words: ReportWords, audience: Audience) => readonly ReportBlock[];
