/** Do two readers score alike? */
export { type AgreeReport, agree, type ScaleAgreement } from "./agree.ts";
export { caseReadings } from "./case-readings.ts";
export type { Difference, PairAgreement } from "./pair.ts";
export { type Reading, ReadingError } from "./reading.ts";
export { readTable, tableReadings } from "./table-readings.ts";
