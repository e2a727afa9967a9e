/** What is measured in a tracing, by the key that it has in a case. */
import { morphometry } from "../generated/knowledge.ts";

export const measures = morphometry.measures;
