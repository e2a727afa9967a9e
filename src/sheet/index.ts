/** The sheet for the table: the pages of a pig, and the tally of snouts and lungs, as what stands on them. */
export {
  type Notice,
  type PigSheet,
  pigSheet,
  type SheetFact,
  type SheetStep,
  type TablePig,
} from "./pig-sheet.ts";
export { samplesWanted } from "./samples.ts";
export { type TallySheet, tallyRows, tallySheet } from "./tally-sheet.ts";
export { isLanguage, languages, type MessageKey, type Words, wordsIn } from "./words.ts";
