/** Results of the laboratory: what is open and what came. Knows no rules. */
export { type Arrived, resultsOverview, soughtIn, type VisitResults, type Waiting } from "./overview.ts";
