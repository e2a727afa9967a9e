/** Rules on sampling: containers, fixation, bags, numbers, and what belongs to a set. Part of the list in rules/index.ts. */

import type { Rule } from "../../rule.ts";
import { holdBack, leaveToAuthority } from "../../shared/silence.ts";
import { sampleOrganNotExamined } from "../consistency/sample-organ-not-examined.ts";
import { abortionSetSmall } from "./abortion-set-small.ts";
import { abortionWithoutPlacenta } from "./abortion-without-placenta.ts";
import { anaerobeInAir } from "./anaerobe-in-air.ts";
import { bloodChilledBeforeClotting } from "./blood-chilled-before-clotting.ts";
import { brainNotHalved } from "./brain-not-halved.ts";
import { cultureInFormalin } from "./culture-in-formalin.ts";
import { cultureOfFrozen } from "./culture-of-frozen.ts";
import { cultureOfTreatedPig } from "./culture-of-treated-pig.ts";
import { cultureOnDrySwab } from "./culture-on-dry-swab.ts";
import { duplicateSample } from "./duplicate-sample.ts";
import { duplicateSampleInVisit } from "./duplicate-sample-in-visit.ts";
import { entericSetIncomplete } from "./enteric-set-incomplete.ts";
import { fixedPieceThick } from "./fixed-piece-thick.ts";
import { fixedPieceTooThick } from "./fixed-piece-too-thick.ts";
import { formalinBesideFresh } from "./formalin-beside-fresh.ts";
import { formalinFarTooLittle } from "./formalin-far-too-little.ts";
import { formalinTooLittle } from "./formalin-too-little.ts";
import { gutPieceClosed } from "./gut-piece-closed.ts";
import { gutPooledAcrossPigs } from "./gut-pooled-across-pigs.ts";
import { gutWithOtherOrgans } from "./gut-with-other-organs.ts";
import { histologyOfFrozen } from "./histology-of-frozen.ts";
import { histologyUnfixed } from "./histology-unfixed.ts";
import { jointOnlyFixed } from "./joint-only-fixed.ts";
import { lesionNotSampled } from "./lesion-not-sampled.ts";
import { lungPiecesFew } from "./lung-pieces-few.ts";
import { meningitisWithoutFluid } from "./meningitis-without-fluid.ts";
import { oneOrganSampled } from "./one-organ-sampled.ts";
import { pcrFromFormalin } from "./pcr-from-formalin.ts";
import { pcrFromHeparin } from "./pcr-from-heparin.ts";
import { pcrSwabInCharcoal } from "./pcr-swab-in-charcoal.ts";
import { pigsPooledInFormalin } from "./pigs-pooled-in-formalin.ts";
import { polyserositisLungOnly } from "./polyserositis-lung-only.ts";
import { poolUnnamed } from "./pool-unnamed.ts";
import { pooledWithUnknown } from "./pooled-with-unknown.ts";
import { sampleOrganAbsent } from "./sample-organ-absent.ts";
import { sampleOrganUnknown } from "./sample-organ-unknown.ts";
import { sampleWithoutContainer } from "./sample-without-container.ts";
import { sampleWithoutTest } from "./sample-without-test.ts";
import { serologyFromAnticoagulant } from "./serology-from-anticoagulant.ts";
import { serologyFromTissue } from "./serology-from-tissue.ts";
import { toxicologyAmountSmall } from "./toxicology-amount-small.ts";
import { toxicologyInFormalin } from "./toxicology-in-formalin.ts";
import { toxicologyWithoutSource } from "./toxicology-without-source.ts";
import { toxinGeneNotAsked } from "./toxin-gene-not-asked.ts";
import { toxinTestMaterial } from "./toxin-test-material.ts";
import { toxinTestMisdated } from "./toxin-test-misdated.ts";
import { virusIsolationInFormalin } from "./virus-isolation-in-formalin.ts";
import { virusIsolationMedium } from "./virus-isolation-medium.ts";

/** Faults of what was taken. */
const faults: readonly Rule[] = [
  cultureInFormalin,
  virusIsolationInFormalin,
  toxicologyInFormalin,
  histologyOfFrozen,
  histologyUnfixed,
  pcrFromFormalin,
  pcrFromHeparin,
  pcrSwabInCharcoal,
  cultureOnDrySwab,
  cultureOfFrozen,
  anaerobeInAir,
  virusIsolationMedium,
  serologyFromAnticoagulant,
  serologyFromTissue,
  bloodChilledBeforeClotting,
  formalinTooLittle,
  formalinFarTooLittle,
  fixedPieceThick,
  fixedPieceTooThick,
  gutPieceClosed,
  gutWithOtherOrgans,
  formalinBesideFresh,
  pigsPooledInFormalin,
  gutPooledAcrossPigs,
  pooledWithUnknown,
  poolUnnamed,
  sampleWithoutContainer,
  sampleWithoutTest,
  duplicateSample,
  duplicateSampleInVisit,
  sampleOrganUnknown,
  sampleOrganAbsent,
  sampleOrganNotExamined,
  cultureOfTreatedPig,
  toxicologyAmountSmall,
];

/** What should have been taken as well. */
const sets: readonly Rule[] = [
  lesionNotSampled,
  oneOrganSampled,
  lungPiecesFew,
  polyserositisLungOnly,
  entericSetIncomplete,
  jointOnlyFixed,
  meningitisWithoutFluid,
  brainNotHalved,
  abortionSetSmall,
  abortionWithoutPlacenta,
  toxinGeneNotAsked,
  toxicologyWithoutSource,
];

/** What came back. */
const answers: readonly Rule[] = [toxinTestMisdated, toxinTestMaterial];

export const samplingRules: readonly Rule[] = [
  ...faults.map(holdBack),
  ...sets.map(leaveToAuthority),
  ...answers,
];
