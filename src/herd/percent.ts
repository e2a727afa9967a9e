/** Proportions as people read them; the words of every room. */
export { levelPercent, percent, percentRange } from "../words/percent.ts";
