/** An interview about one pig: what is asked next, and what an answer writes. */
export type { Asker, Choice, Line, Reply } from "./asker.ts";
export { type Desk, type Ended, interview } from "./interview.ts";
export { commonStart } from "./words.ts";
