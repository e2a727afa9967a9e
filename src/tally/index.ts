/** Tables: a tally of pigs as cases, the empty table to fill in, and what other tables are read with. */
export { columnsOf, type ReadColumn } from "./columns.ts";
export { emptyTable } from "./empty-table.ts";
export { headOf } from "./head.ts";
export { type Proposed, proposal } from "./proposal.ts";
export { schemaHead } from "./record-text.ts";
export { type Cell, isFilled, noCell, Table, TableFault } from "./table.ts";
export { firstOf, readTally, saidOfHead, type Tally, type Unmapped } from "./tally.ts";
export { cellValue, isUnread, type Manner, mannerOf } from "./values.ts";
