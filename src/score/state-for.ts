/** What a case records of the thing that a scale scores: an organ, or the pig as a whole. */
import type { Case, OrganState } from "../cases/index.ts";
import { organById, type Scale } from "../knowledge/index.ts";

/** The name of the whole pig where a scale names its organ; what it reads then stands under `pig`. */
const wholePig = "pig";

/** @throws RangeError when the scale is for an organ that does not exist */
export function stateFor(one: Pick<Case, "organ" | "record">, scale: Scale): OrganState {
  if (scale.organ === wholePig) return pigState(one);
  const organ = organById(scale.organ);
  if (organ === undefined)
    throw new RangeError(
      `scale ${scale.id}: there is no organ "${scale.organ}"; write it as system.organ, or pig`,
    );
  const state = one.organ(organ);
  const { closed } = one.record;
  return closed !== undefined && state.status === "blank"
    ? { ...state, status: "not_examined", reason: `closed on suspicion (${closed.because})` }
    : state;
}

function pigState({ record }: Pick<Case, "record">): OrganState {
  const entry = { ...record.pig };
  return {
    status: "recorded",
    path: [wholePig],
    bySystem: false,
    reason: undefined,
    because: undefined,
    findings: [],
    entry,
    sides: [],
  };
}
