/** What a rule, a scale, an organ or a word is, and who says so. */
export { explain, nearestNames, topics } from "./explain.ts";
export { type Explanation, type Kind, kinds, type Section } from "./explanation.ts";
