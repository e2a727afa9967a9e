/** Rules of the family selection, in the order of the documentation. */
import type { Rule } from "../../rule.ts";
import { basisContradicted } from "./basis-contradicted.ts";
import { lastTreatmentMissing } from "./last-treatment-missing.ts";
import { onsetTooLong } from "./onset-too-long.ts";
import { randomDrawUnsaid } from "./random-draw-unsaid.ts";
import { selectionMissing } from "./selection-missing.ts";
import { treatedPig } from "./treated-pig.ts";
import { wholeGroupIncomplete } from "./whole-group-incomplete.ts";

export const selectionRules: readonly Rule[] = [
  ...selectionMissing,
  treatedPig,
  lastTreatmentMissing,
  onsetTooLong,
  ...basisContradicted,
  randomDrawUnsaid,
  wholeGroupIncomplete,
];
