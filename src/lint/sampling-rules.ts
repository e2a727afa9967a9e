/** Rules on sampling: containers, fixation, bags, numbers, and what belongs to a set. Part of the list in rules/index.ts. */
import { holdBack, leaveToAuthority } from "./hold-back.ts";
import type { Rule } from "./rule.ts";
import { abortionSetSmall } from "./rules/abortion-set-small.ts";
import { abortionWithoutPlacenta } from "./rules/abortion-without-placenta.ts";
import { anaerobeInAir } from "./rules/anaerobe-in-air.ts";
import { bloodChilledBeforeClotting } from "./rules/blood-chilled-before-clotting.ts";
import { brainNotHalved } from "./rules/brain-not-halved.ts";
import { cultureInFormalin } from "./rules/culture-in-formalin.ts";
import { cultureOfTreatedPig } from "./rules/culture-of-treated-pig.ts";
import { cultureOnDrySwab } from "./rules/culture-on-dry-swab.ts";
import { duplicateSample } from "./rules/duplicate-sample.ts";
import { duplicateSampleInVisit } from "./rules/duplicate-sample-in-visit.ts";
import { entericSetIncomplete } from "./rules/enteric-set-incomplete.ts";
import { fixedPieceThick } from "./rules/fixed-piece-thick.ts";
import { fixedPieceTooThick } from "./rules/fixed-piece-too-thick.ts";
import { formalinBesideFresh } from "./rules/formalin-beside-fresh.ts";
import { formalinFarTooLittle } from "./rules/formalin-far-too-little.ts";
import { formalinTooLittle } from "./rules/formalin-too-little.ts";
import { gutPieceClosed } from "./rules/gut-piece-closed.ts";
import { gutPooledAcrossPigs } from "./rules/gut-pooled-across-pigs.ts";
import { gutWithOtherOrgans } from "./rules/gut-with-other-organs.ts";
import { histologyOfFrozen } from "./rules/histology-of-frozen.ts";
import { histologyUnfixed } from "./rules/histology-unfixed.ts";
import { jointOnlyFixed } from "./rules/joint-only-fixed.ts";
import { lesionNotSampled } from "./rules/lesion-not-sampled.ts";
import { lungPiecesFew } from "./rules/lung-pieces-few.ts";
import { meningitisWithoutFluid } from "./rules/meningitis-without-fluid.ts";
import { oneOrganSampled } from "./rules/one-organ-sampled.ts";
import { pcrFromFormalin } from "./rules/pcr-from-formalin.ts";
import { pcrFromHeparin } from "./rules/pcr-from-heparin.ts";
import { pcrSwabInCharcoal } from "./rules/pcr-swab-in-charcoal.ts";
import { pigsPooledInFormalin } from "./rules/pigs-pooled-in-formalin.ts";
import { polyserositisLungOnly } from "./rules/polyserositis-lung-only.ts";
import { pooledWithUnknown } from "./rules/pooled-with-unknown.ts";
import { sampleOrganAbsent } from "./rules/sample-organ-absent.ts";
import { sampleOrganNotExamined } from "./rules/sample-organ-not-examined.ts";
import { sampleOrganUnknown } from "./rules/sample-organ-unknown.ts";
import { sampleWithoutContainer } from "./rules/sample-without-container.ts";
import { sampleWithoutTest } from "./rules/sample-without-test.ts";
import { serologyFromAnticoagulant } from "./rules/serology-from-anticoagulant.ts";
import { serologyFromTissue } from "./rules/serology-from-tissue.ts";
import { toxicologyAmountSmall } from "./rules/toxicology-amount-small.ts";
import { toxicologyInFormalin } from "./rules/toxicology-in-formalin.ts";
import { toxicologyWithoutSource } from "./rules/toxicology-without-source.ts";
import { toxinGeneNotAsked } from "./rules/toxin-gene-not-asked.ts";
import { virusIsolationInFormalin } from "./rules/virus-isolation-in-formalin.ts";
import { virusIsolationMedium } from "./rules/virus-isolation-medium.ts";

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

export const samplingRules: readonly Rule[] = [...faults.map(holdBack), ...sets.map(leaveToAuthority)];
