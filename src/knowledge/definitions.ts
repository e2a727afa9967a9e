/** What each word of the closed lists means, and words that are easily taken for one another; only explaining needs it. */
export { definitions } from "../generated/knowledge/definitions.ts";
export type { Definition } from "../generated/knowledge.types.ts";
