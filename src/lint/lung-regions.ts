/** Which part of the lungs the lobes of a case say is consolidated, where every lobe has its number. */
import type { Case } from "../cases/index.ts";
import { type Lobes, lobes } from "./lobes.ts";

export interface LungRegions {
  readonly graded: Lobes;
  /** Consolidation in front and below, and none in the caudal lobes. */
  readonly onlyCranioventral: boolean;
  /** Consolidation in the caudal lobes, none in their cranial parts and none in front of them. */
  readonly onlyCaudal: boolean;
}

const caudal = ["left_caudal", "right_caudal"];

/** @returns undefined when a lobe has no number */
export function lungRegions(one: Case): LungRegions | undefined {
  const graded = lobes(one);
  if (graded === undefined || !graded.complete) return undefined;
  const ill = [...graded.values].filter(([, value]) => value > 0).map(([name]) => name);
  const ofCaudal = ill.filter((name) => caudal.includes(name));
  return {
    graded,
    onlyCranioventral: ill.length > 0 && ofCaudal.length === 0,
    onlyCaudal:
      ill.length > 0 &&
      ofCaudal.length === ill.length &&
      ["left", "right"].every((side) => graded.cranialParts.get(side) === 0),
  };
}
