/** Every finding of a case with its place; made by the room of the cases, which alarms need as well. */
export { findingsOf, type PlacedFinding } from "../cases/index.ts";
