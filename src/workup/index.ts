/** The work-up: which diseases a record fits, and on what that rests. */
export { type Met, statementsMet } from "./statements.ts";
