/** Rules of the family description, in the order of the documentation. */
import type { Rule } from "../../rule.ts";
import { artefactDescribedAsLesion } from "./artefact-described-as-lesion.ts";
import { contradictedWords } from "./contradicted-words.ts";
import { distributionContradictions } from "./distribution-contradictions.ts";
import { enlargementUnmeasured } from "./enlargement-unmeasured.ts";
import { findingTwice } from "./finding-twice.ts";
import { impossibleMeasures } from "./impossible-measures.ts";
import { measureZero } from "./measure-zero.ts";
import { missingFields } from "./missing-fields.ts";
import { normalNoteContradiction } from "./normal-note-contradiction.ts";
import { normalWithFinding } from "./normal-with-finding.ts";

export const descriptionRules: readonly Rule[] = [
  normalWithFinding,
  normalNoteContradiction,
  ...missingFields,
  enlargementUnmeasured,
  measureZero,
  artefactDescribedAsLesion,
  ...distributionContradictions,
  ...contradictedWords,
  ...impossibleMeasures,
  findingTwice,
];
