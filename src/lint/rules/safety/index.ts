/** Rules of the family safety, in the order of the documentation. */
import type { Rule } from "../../rule.ts";
import { formalinRules } from "./formalin.ts";
import { liftedAlone } from "./lifted-alone.ts";
import { protectionRules } from "./protection.ts";

export const safetyRules: readonly Rule[] = [...protectionRules, ...formalinRules, liftedAlone];
