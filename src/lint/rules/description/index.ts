/** Rules of the family description, in the order of the documentation. */
import type { Rule } from "../../rule.ts";
import { artefactDescribedAsLesion } from "./artefact-described-as-lesion.ts";
import { colourContradiction } from "./colour-contradiction.ts";
import { colourMissing } from "./colour-missing.ts";
import { consistencyContradiction } from "./consistency-contradiction.ts";
import { distributionExtentContradiction } from "./distribution-extent-contradiction.ts";
import { distributionNumberContradiction } from "./distribution-number-contradiction.ts";
import { distributionSideContradiction } from "./distribution-side-contradiction.ts";
import { durationContradiction } from "./duration-contradiction.ts";
import { enlargementUnmeasured } from "./enlargement-unmeasured.ts";
import { exudateContradiction } from "./exudate-contradiction.ts";
import { exudateWithoutWord } from "./exudate-without-word.ts";
import { findingTwice } from "./finding-twice.ts";
import { findingWithoutDistribution } from "./finding-without-distribution.ts";
import { findingWithoutSize } from "./finding-without-size.ts";
import { fluidWithoutVolume } from "./fluid-without-volume.ts";
import { lumpWithoutSize } from "./lump-without-size.ts";
import { measureZero } from "./measure-zero.ts";
import { normalNoteContradiction } from "./normal-note-contradiction.ts";
import { normalWithFinding } from "./normal-with-finding.ts";
import { sizeImplausible } from "./size-implausible.ts";
import { volumeImplausible } from "./volume-implausible.ts";

export const descriptionRules: readonly Rule[] = [
  normalWithFinding,
  normalNoteContradiction,
  findingWithoutDistribution,
  findingWithoutSize,
  fluidWithoutVolume,
  exudateWithoutWord,
  colourMissing,
  lumpWithoutSize,
  enlargementUnmeasured,
  measureZero,
  artefactDescribedAsLesion,
  distributionSideContradiction,
  distributionExtentContradiction,
  distributionNumberContradiction,
  colourContradiction,
  consistencyContradiction,
  exudateContradiction,
  durationContradiction,
  sizeImplausible,
  findingTwice,
  volumeImplausible,
];
