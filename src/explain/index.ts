/** What a rule, a scale, an organ or a word is, and who says so. */
export { explainCase } from "./case.ts";
export { explain, kindCalled, nearestNames, topics } from "./explain.ts";
export {
  type Explanation,
  type Kind,
  kindGroups,
  kinds,
  lists,
  type Section,
  type Topic,
} from "./explanation.ts";
export { houseScaleTopics } from "./scales.ts";
