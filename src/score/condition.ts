/** Parts that count only while another observation says so: the size of a wound only where there is one. */
import type { ScalePart } from "../knowledge/index.ts";
import { observation } from "./observed.ts";

export type Condition = NonNullable<ScalePart["zero_unless"]>;

/**
 * Whether the condition holds.
 * @returns undefined when the observation that it asks is not recorded
 */
export function holds(
  { read, is, from, above, below }: Condition,
  entry: object | undefined,
): boolean | undefined {
  const written = observation(entry, read);
  if (written === undefined) return undefined;
  if (is !== undefined) return [written].flat().some((word) => is.includes(String(word)));
  return (
    typeof written === "number" &&
    (from === undefined || written >= from) &&
    (above === undefined || written > above) &&
    (below === undefined || written < below)
  );
}
