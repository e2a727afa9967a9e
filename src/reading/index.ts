/** What the snouts of a visit say and what they cannot say: never more than loss, until a test for the toxin is there. */
export type { Snout, SnoutFacts } from "./snout-facts.ts";
export { type SnoutReading, snoutReading } from "./snout-reading.ts";
export { type SnoutStatement, statementsOf } from "./statements.ts";
export type { ToxinTest } from "./toxin-tests.ts";
