/** The sheets as one document to print. */
import type { Paper } from "../../knowledge/paper.ts";
import type { PigSheet, TallySheet, Words } from "../../sheet/index.ts";
import { documentOf } from "./page.ts";
import { pigPages } from "./pig.ts";
import { tallyPages } from "./tally.ts";

/** A pig a page, or front and back. */
export const pigSheets = (sheets: readonly PigSheet[], paper: Paper, words: Words): string =>
  documentOf(
    words.say("title"),
    sheets.map((sheet) => pigPages(sheet, paper, words)),
    paper,
    words,
  );

/** Thirty pigs a page. */
export const tallySheet = (sheet: TallySheet, paper: Paper, words: Words): string =>
  documentOf(words.say("tally_title"), [tallyPages(sheet, paper, words)], paper, words);
