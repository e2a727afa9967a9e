/** Rules of the family scoring, in the order of the documentation. */
import type { Rule } from "../../rule.ts";
import { boneDustAsLesion } from "./bone-dust-as-lesion.ts";
import { boneDustLeft } from "./bone-dust-left.ts";
import { brainInPieces } from "./brain-in-pieces.ts";
import { brainInPiecesJudged } from "./brain-in-pieces-judged.ts";
import { environmentalLossSevere } from "./environmental-loss-severe.ts";
import { environmentalLossUnmeasured } from "./environmental-loss-unmeasured.ts";
import { gradeContradictsParts } from "./grade-contradicts-parts.ts";
import { gradeScaleUnknown } from "./grade-scale-unknown.ts";
import { measurementOutdated } from "./measurement-outdated.ts";
import { observationOutOfRange } from "./observation-out-of-range.ts";
import { snoutSectionMissing } from "./snout-section-missing.ts";
import { turbinateLossContradiction } from "./turbinate-loss-contradiction.ts";
import { turbinateLossUnexplained } from "./turbinate-loss-unexplained.ts";
import { wrongCuts } from "./wrong-cuts.ts";

export const scoringRules: readonly Rule[] = [
  snoutSectionMissing,
  ...wrongCuts,
  brainInPieces,
  brainInPiecesJudged,
  boneDustLeft,
  boneDustAsLesion,
  turbinateLossUnexplained,
  turbinateLossContradiction,
  environmentalLossSevere,
  environmentalLossUnmeasured,
  observationOutOfRange,
  gradeScaleUnknown,
  gradeContradictsParts,
  measurementOutdated,
];
