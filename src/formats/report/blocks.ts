/** What a section of a report is made of: the blocks of every command, figures, photographs, and what templates made. */
import type { Audience, ReportResult, ReportWords } from "../../report/index.ts";
import type { Block } from "../page/blocks.ts";
import type { Html } from "../page/html.ts";
import type { Dress, Shown } from "./dress.ts";
import type { Picture } from "./pictures.ts";

export type ReportBlock =
  | Block
  | { readonly kind: "figure"; readonly picture: Picture }
  | {
      readonly kind: "photograph";
      readonly caption: string;
      readonly file: string;
      readonly shown: Shown | null;
    }
  | { readonly kind: "made"; readonly made: Html };

export const drawn = (pictures: readonly Picture[]): ReportBlock[] =>
  pictures.map((picture) => ({ kind: "figure", picture }));

export interface Reader {
  readonly audience: Audience;
  readonly dress: Dress;
}

/** A section: nothing where there is nothing to tell. */
export type Part = (report: ReportResult, words: ReportWords, reader: Reader) => readonly ReportBlock[];
