/** Rules of the family selection, in the order of the documentation. */
import type { Rule } from "../../rule.ts";
import { clinicalWithoutSigns } from "./clinical-without-signs.ts";
import { comparisonWithSigns } from "./comparison-with-signs.ts";
import { culledWithoutReason } from "./culled-without-reason.ts";
import { lastTreatmentMissing } from "./last-treatment-missing.ts";
import { onsetTooLong } from "./onset-too-long.ts";
import { pigNotTypical } from "./pig-not-typical.ts";
import { randomDrawUnsaid } from "./random-draw-unsaid.ts";
import { selectionBasisMissing } from "./selection-basis-missing.ts";
import { signsMissing } from "./signs-missing.ts";
import { treatedPig } from "./treated-pig.ts";
import { wholeGroupIncomplete } from "./whole-group-incomplete.ts";

export const selectionRules: readonly Rule[] = [
  selectionBasisMissing,
  signsMissing,
  treatedPig,
  onsetTooLong,
  pigNotTypical,
  clinicalWithoutSigns,
  comparisonWithSigns,
  randomDrawUnsaid,
  wholeGroupIncomplete,
  culledWithoutReason,
  lastTreatmentMissing,
];
