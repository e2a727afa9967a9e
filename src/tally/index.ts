/** Tables of pigs: a tally as cases, and the empty table to fill in. */
export { emptyTable } from "./empty-table.ts";
export { type Proposed, proposal } from "./proposal.ts";
export { TableFault } from "./table.ts";
export { readTally, type Tally, type Unmapped } from "./tally.ts";
