/** Free words: which words of a list stand in a text, and which of them it affirms. */
export { affirmed, clausesOf } from "./affirmed.ts";
export { hasAny, occurrences, wordIn } from "./words-in.ts";
