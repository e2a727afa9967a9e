/** Rules of the family safety, in the order of the documentation. */
import type { Rule } from "../../rule.ts";
import { abortionWithoutMask } from "./abortion-without-mask.ts";
import { eyesUnprotected } from "./eyes-unprotected.ts";
import { formalinDenied } from "./formalin-denied.ts";
import { formalinHandlingUnrecorded } from "./formalin-handling-unrecorded.ts";
import { formalinIndoors } from "./formalin-indoors.ts";
import { glovesMissing } from "./gloves-missing.ts";
import { knifeHandBare } from "./knife-hand-bare.ts";
import { liftedAlone } from "./lifted-alone.ts";
import { sawWithoutMask } from "./saw-without-mask.ts";

export const safetyRules: readonly Rule[] = [
  sawWithoutMask,
  eyesUnprotected,
  glovesMissing,
  knifeHandBare,
  abortionWithoutMask,
  formalinIndoors,
  formalinHandlingUnrecorded,
  formalinDenied,
  liftedAlone,
];
