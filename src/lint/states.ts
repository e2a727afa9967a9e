/** The states a case holds of an organ: its own, and those of its sides. */
import type { Case, OrganState } from "../cases/index.ts";
import type { PlacedOrgan } from "../knowledge/index.ts";

export function statesOf(one: Case, organ: PlacedOrgan): OrganState[] {
  const state = one.organ(organ);
  return [state, ...state.sides.map((side) => side.state)];
}
