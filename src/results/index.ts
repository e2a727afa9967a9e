/** Results of the laboratory: what is open and what came. Knows no rules. */

export { importResults } from "./import-table.ts";
export { type Arrived, resultsOverview, soughtIn, type VisitResults, type Waiting } from "./overview.ts";
