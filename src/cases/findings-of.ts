/** Every finding of a case with its place, organ by organ and side by side. */
import { organs, type PlacedOrgan } from "../knowledge/index.ts";
import type { Case } from "./model.ts";
import type { Finding } from "./organ-state.ts";
import type { Path } from "./path.ts";

export interface PlacedFinding {
  readonly organ: PlacedOrgan;
  readonly finding: Finding;
  readonly path: Path;
}

export function findingsOf(one: Case): readonly PlacedFinding[] {
  const known = gathered.get(one);
  if (known !== undefined) return known;
  const findings = gather(one);
  gathered.set(one, findings);
  return findings;
}

/** Many rules ask for the findings of the same case, which does not change. */
const gathered = new WeakMap<Case, readonly PlacedFinding[]>();

function gather(one: Case): PlacedFinding[] {
  return organs.flatMap((organ) => {
    const state = one.organ(organ);
    return [state, ...state.sides.map((side) => side.state)].flatMap(({ findings }) =>
      findings.map(({ finding, path }) => ({ organ, finding, path })),
    );
  });
}
