/** Every finding of a case with its place, organ by organ and side by side. */
import type { Case, Finding, Path } from "../cases/index.ts";
import { organs, type PlacedOrgan } from "../knowledge/index.ts";
import { statesOf } from "./states.ts";

export interface PlacedFinding {
  readonly organ: PlacedOrgan;
  readonly finding: Finding;
  readonly path: Path;
}

export function findingsOf(one: Case): PlacedFinding[] {
  return organs.flatMap((organ) =>
    statesOf(one, organ).flatMap((state) =>
      state.findings.map(({ finding, path }) => ({ organ, finding, path })),
    ),
  );
}
