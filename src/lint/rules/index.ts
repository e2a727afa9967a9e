/** Every rule, in the order of the documentation. The list is explicit: a rule that is not here does not exist. */
import type { Rule } from "../rule.ts";
import { samplingRules } from "../sampling-rules.ts";
import { timingRules } from "../timing-rules.ts";
import { abortionWithoutMask } from "./abortion-without-mask.ts";
import { acceptedLockedRule } from "./accepted-locked-rule.ts";
import { acceptedUnknownRule } from "./accepted-unknown-rule.ts";
import { acceptedUnused } from "./accepted-unused.ts";
import { acceptedWithoutReason } from "./accepted-without-reason.ts";
import { ageClassMismatch } from "./age-class-mismatch.ts";
import { airPrimaryTooLarge } from "./air-primary-too-large.ts";
import { airUnread } from "./air-unread.ts";
import { airVolumeTooLarge } from "./air-volume-too-large.ts";
import { airWeightTooLarge } from "./air-weight-too-large.ts";
import { alarmExclude } from "./alarm-exclude.ts";
import { alarmInHerd } from "./alarm-in-herd.ts";
import { alarmInHerdExclude } from "./alarm-in-herd-exclude.ts";
import { alarmPattern } from "./alarm-pattern.ts";
import { alarmSignRecorded } from "./alarm-sign-recorded.ts";
import { artefactDescribedAsLesion } from "./artefact-described-as-lesion.ts";
import { authorityBeforeDeath } from "./authority-before-death.ts";
import { authorityBeforeVisit } from "./authority-before-visit.ts";
import { basisContradictsDeath } from "./basis-contradicts-death.ts";
import { boneDustAsLesion } from "./bone-dust-as-lesion.ts";
import { boneDustLeft } from "./bone-dust-left.ts";
import { bornDeadContradiction } from "./born-dead-contradiction.ts";
import { brainDestroyed } from "./brain-destroyed.ts";
import { brainInPieces } from "./brain-in-pieces.ts";
import { brainInPiecesJudged } from "./brain-in-pieces-judged.ts";
import { brainUnseen } from "./brain-unseen.ts";
import { caseDayOffVisit } from "./case-day-off-visit.ts";
import { caseFormat } from "./case-format.ts";
import { caseListMissing } from "./case-list-missing.ts";
import { caseNotInVisit } from "./case-not-in-visit.ts";
import { caudalLobesWorse } from "./caudal-lobes-worse.ts";
import { caudalPartContradictsLobe } from "./caudal-part-contradicts-lobe.ts";
import { causeWithoutDifferentials } from "./cause-without-differentials.ts";
import { causeWithoutLaboratory } from "./cause-without-laboratory.ts";
import { clinicalPigsOneLitter } from "./clinical-pigs-one-litter.ts";
import { clinicalPigsOnePen } from "./clinical-pigs-one-pen.ts";
import { clinicalWithoutSigns } from "./clinical-without-signs.ts";
import { colourContradiction } from "./colour-contradiction.ts";
import { colourMissing } from "./colour-missing.ts";
import { comparisonWithSigns } from "./comparison-with-signs.ts";
import { complaintMissing } from "./complaint-missing.ts";
import { consistencyContradiction } from "./consistency-contradiction.ts";
import { consolidationWithoutLobes } from "./consolidation-without-lobes.ts";
import { coughLungsUnseen } from "./cough-lungs-unseen.ts";
import { crownRumpImplausible } from "./crown-rump-implausible.ts";
import { crownRumpOfBornPig } from "./crown-rump-of-born-pig.ts";
import { culledWithoutReason } from "./culled-without-reason.ts";
import { dateImpossible } from "./date-impossible.ts";
import { datesOutOfOrder } from "./dates-out-of-order.ts";
import { diagnosisAgainstSeverity } from "./diagnosis-against-severity.ts";
import { diagnosisWithoutDegree } from "./diagnosis-without-degree.ts";
import { diagnosisWithoutLesion } from "./diagnosis-without-lesion.ts";
import { diagnosisWithoutOrgan } from "./diagnosis-without-organ.ts";
import { diseaseAsLesion } from "./disease-as-lesion.ts";
import { distributionExtentContradiction } from "./distribution-extent-contradiction.ts";
import { distributionNumberContradiction } from "./distribution-number-contradiction.ts";
import { distributionSideContradiction } from "./distribution-side-contradiction.ts";
import { dorsalWorseThanVentral } from "./dorsal-worse-than-ventral.ts";
import { dryIceNotVented } from "./dry-ice-not-vented.ts";
import { dryIceWeightMissing } from "./dry-ice-weight-missing.ts";
import { duplicateCase } from "./duplicate-case.ts";
import { duplicateTag } from "./duplicate-tag.ts";
import { durationContradiction } from "./duration-contradiction.ts";
import { enlargementUnmeasured } from "./enlargement-unmeasured.ts";
import { entericGutUnseen } from "./enteric-gut-unseen.ts";
import { environmentalLossSevere } from "./environmental-loss-severe.ts";
import { environmentalLossUnmeasured } from "./environmental-loss-unmeasured.ts";
import { extentContradictsLobes } from "./extent-contradicts-lobes.ts";
import { exudateContradiction } from "./exudate-contradiction.ts";
import { exudateWithoutWord } from "./exudate-without-word.ts";
import { eyesUnprotected } from "./eyes-unprotected.ts";
import { factMissing } from "./fact-missing.ts";
import { feverNodesUnseen } from "./fever-nodes-unseen.ts";
import { fewPigsForSyndrome } from "./few-pigs-for-syndrome.ts";
import { findingTwice } from "./finding-twice.ts";
import { findingWithoutDistribution } from "./finding-without-distribution.ts";
import { findingWithoutSize } from "./finding-without-size.ts";
import { fluidWithoutVolume } from "./fluid-without-volume.ts";
import { formalinDenied } from "./formalin-denied.ts";
import { formalinHandlingUnrecorded } from "./formalin-handling-unrecorded.ts";
import { formalinIndoors } from "./formalin-indoors.ts";
import { formalinNotApart } from "./formalin-not-apart.ts";
import { formalinOnDryIce } from "./formalin-on-dry-ice.ts";
import { freshYetAutolysed } from "./fresh-yet-autolysed.ts";
import { frozenSampleOnColdPacks } from "./frozen-sample-on-cold-packs.ts";
import { glovesMissing } from "./gloves-missing.ts";
import { gradeScaleUnknown } from "./grade-scale-unknown.ts";
import { groupClassMismatch } from "./group-class-mismatch.ts";
import { groupCountsImpossible } from "./group-counts-impossible.ts";
import { groupCountsMissing } from "./group-counts-missing.ts";
import { groupLargerThanFarm } from "./group-larger-than-farm.ts";
import { groupOnsetAfterVisit } from "./group-onset-after-visit.ts";
import { groupOnsetMissing } from "./group-onset-missing.ts";
import { groupUnknown } from "./group-unknown.ts";
import { interpretationInDescription } from "./interpretation-in-description.ts";
import { knifeHandBare } from "./knife-hand-bare.ts";
import { lamePigJoints } from "./lame-pig-joints.ts";
import { lastSeenAliveMissing } from "./last-seen-alive-missing.ts";
import { lastTreatmentMissing } from "./last-treatment-missing.ts";
import { lesionWithoutPhoto } from "./lesion-without-photo.ts";
import { liftedAlone } from "./lifted-alone.ts";
import { lobeMissing } from "./lobe-missing.ts";
import { lumpWithoutSize } from "./lump-without-size.ts";
import { markedLesionUndiagnosed } from "./marked-lesion-undiagnosed.ts";
import { measureZero } from "./measure-zero.ts";
import { mesentericRootUnpalpated } from "./mesenteric-root-unpalpated.ts";
import { methodWithoutKill } from "./method-without-kill.ts";
import { mummyCultured } from "./mummy-cultured.ts";
import { nasalSignsTurbinatesUnseen } from "./nasal-signs-turbinates-unseen.ts";
import { newbornNeverBreathed } from "./newborn-never-breathed.ts";
import { noAcuteUntreatedPig } from "./no-acute-untreated-pig.ts";
import { noHealthyComparison } from "./no-healthy-comparison.ts";
import { normalWithFinding } from "./normal-with-finding.ts";
import { notAssessableWithoutCause } from "./not-assessable-without-cause.ts";
import { notExaminedWithoutReason } from "./not-examined-without-reason.ts";
import { observationMissing } from "./observation-missing.ts";
import { observationOutOfRange } from "./observation-out-of-range.ts";
import { onsetTooLong } from "./onset-too-long.ts";
import { organImpossible } from "./organ-impossible.ts";
import { organNeverExamined } from "./organ-never-examined.ts";
import { organWeightImplausible } from "./organ-weight-implausible.ts";
import { parcelArrivesBeforeSent } from "./parcel-arrives-before-sent.ts";
import { parcelBeforeSample } from "./parcel-before-sample.ts";
import { parcelCategoryTooLow } from "./parcel-category-too-low.ts";
import { parcelContactMissing } from "./parcel-contact-missing.ts";
import { parcelCoolantInside } from "./parcel-coolant-inside.ts";
import { parcelDuringAlarm } from "./parcel-during-alarm.ts";
import { parcelExemptThoughIll } from "./parcel-exempt-though-ill.ts";
import { parcelFormInside } from "./parcel-form-inside.ts";
import { parcelFormMissing } from "./parcel-form-missing.ts";
import { parcelMarkMissing } from "./parcel-mark-missing.ts";
import { parcelMarkTooSmall } from "./parcel-mark-too-small.ts";
import { parcelNotCooled } from "./parcel-not-cooled.ts";
import { parcelOuterSoft } from "./parcel-outer-soft.ts";
import { parcelOuterTooSmall } from "./parcel-outer-too-small.ts";
import { parcelPackingUnrecorded } from "./parcel-packing-unrecorded.ts";
import { parcelPrimaryLeaks } from "./parcel-primary-leaks.ts";
import { parcelSampleUnknown } from "./parcel-sample-unknown.ts";
import { parcelTooLateForCulture } from "./parcel-too-late-for-culture.ts";
import { parcelWithoutAbsorbent } from "./parcel-without-absorbent.ts";
import { parcelWithoutSamples } from "./parcel-without-samples.ts";
import { parcelWithoutSecondary } from "./parcel-without-secondary.ts";
import { parityImpossible } from "./parity-impossible.ts";
import { parsOesophageaUnseen } from "./pars-oesophagea-unseen.ts";
import { pendingAgainstBasis } from "./pending-against-basis.ts";
import { pendingWithoutSample } from "./pending-without-sample.ts";
import { photoAbsent } from "./photo-absent.ts";
import { photoInTwoCases } from "./photo-in-two-cases.ts";
import { photoOrganUnknown } from "./photo-organ-unknown.ts";
import { photoWithoutScale } from "./photo-without-scale.ts";
import { photoWithoutSubject } from "./photo-without-subject.ts";
import { pictureElsewhere } from "./picture-elsewhere.ts";
import { pigNotTypical } from "./pig-not-typical.ts";
import { pleurisyAdhesionUnscored } from "./pleurisy-adhesion-unscored.ts";
import { pleurisyNoneAndMore } from "./pleurisy-none-and-more.ts";
import { progressiveWithoutToxin } from "./progressive-without-toxin.ts";
import { protocolUnknown } from "./protocol-unknown.ts";
import { randomDrawUnsaid } from "./random-draw-unsaid.ts";
import { readingOffVisit } from "./reading-off-visit.ts";
import { sampleInNoParcel } from "./sample-in-no-parcel.ts";
import { sampleInTwoParcels } from "./sample-in-two-parcels.ts";
import { sawWithoutMask } from "./saw-without-mask.ts";
import { selectionBasisMissing } from "./selection-basis-missing.ts";
import { septumContradictsFinding } from "./septum-contradicts-finding.ts";
import { sideMissing } from "./side-missing.ts";
import { signImpossible } from "./sign-impossible.ts";
import { signsMissing } from "./signs-missing.ts";
import { signsNoneAndMore } from "./signs-none-and-more.ts";
import { simileInDescription } from "./simile-in-description.ts";
import { siteContradictsLobes } from "./site-contradicts-lobes.ts";
import { sizeImplausible } from "./size-implausible.ts";
import { skippedOrgan } from "./skipped-organ.ts";
import { skippedSystem } from "./skipped-system.ts";
import { skullCutWrong } from "./skull-cut-wrong.ts";
import { slaughteredByBarbiturate } from "./slaughtered-by-barbiturate.ts";
import { smallRandomSample } from "./small-random-sample.ts";
import { snoutGradeContradictsConchae } from "./snout-grade-contradicts-conchae.ts";
import { snoutGradesContradict } from "./snout-grades-contradict.ts";
import { snoutSectionMissing } from "./snout-section-missing.ts";
import { snoutSectionRostral } from "./snout-section-rostral.ts";
import { snoutSkinSawn } from "./snout-skin-sawn.ts";
import { stillbornBreathed } from "./stillborn-breathed.ts";
import { tagUnquoted } from "./tag-unquoted.ts";
import { temperatureImplausible } from "./temperature-implausible.ts";
import { tracingAbsent } from "./tracing-absent.ts";
import { treatedPig } from "./treated-pig.ts";
import { treatmentsMissing } from "./treatments-missing.ts";
import { turbinateLossContradiction } from "./turbinate-loss-contradiction.ts";
import { turbinateLossUnexplained } from "./turbinate-loss-unexplained.ts";
import { twoReaders } from "./two-readers.ts";
import { vaccinationsMissing } from "./vaccinations-missing.ts";
import { valvesUnseen } from "./valves-unseen.ts";
import { veterinarianMissing } from "./veterinarian-missing.ts";
import { visitCaseAbsent } from "./visit-case-absent.ts";
import { visitDateImpossible } from "./visit-date-impossible.ts";
import { visitDateOffFolder } from "./visit-date-off-folder.ts";
import { visitGroupUnknown } from "./visit-group-unknown.ts";
import { volumeImplausible } from "./volume-implausible.ts";
import { wastingYetFat } from "./wasting-yet-fat.ts";
import { weightImplausible } from "./weight-implausible.ts";
import { wholeGroupIncomplete } from "./whole-group-incomplete.ts";

export const rules: readonly Rule[] = [
  skippedSystem,
  skippedOrgan,
  notExaminedWithoutReason,
  notAssessableWithoutCause,
  sideMissing,
  lobeMissing,
  observationMissing,
  lamePigJoints,
  parsOesophageaUnseen,
  mesentericRootUnpalpated,
  feverNodesUnseen,
  nasalSignsTurbinatesUnseen,
  valvesUnseen,
  brainUnseen,
  entericGutUnseen,
  coughLungsUnseen,
  factMissing,
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
  complaintMissing,
  veterinarianMissing,
  treatmentsMissing,
  vaccinationsMissing,
  groupCountsMissing,
  groupOnsetMissing,
  groupCountsImpossible,
  groupLargerThanFarm,
  visitGroupUnknown,
  airUnread,
  readingOffVisit,
  visitDateImpossible,
  visitDateOffFolder,
  groupOnsetAfterVisit,
  lastSeenAliveMissing,
  normalWithFinding,
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
  snoutSectionMissing,
  snoutSectionRostral,
  brainInPieces,
  brainInPiecesJudged,
  skullCutWrong,
  snoutSkinSawn,
  boneDustLeft,
  boneDustAsLesion,
  turbinateLossUnexplained,
  turbinateLossContradiction,
  environmentalLossSevere,
  environmentalLossUnmeasured,
  observationOutOfRange,
  gradeScaleUnknown,
  weightImplausible,
  ageClassMismatch,
  organImpossible,
  stillbornBreathed,
  newbornNeverBreathed,
  consolidationWithoutLobes,
  extentContradictsLobes,
  caudalPartContradictsLobe,
  caudalLobesWorse,
  siteContradictsLobes,
  pleurisyNoneAndMore,
  pleurisyAdhesionUnscored,
  septumContradictsFinding,
  snoutGradeContradictsConchae,
  snoutGradesContradict,
  dorsalWorseThanVentral,
  temperatureImplausible,
  crownRumpOfBornPig,
  crownRumpImplausible,
  parityImpossible,
  organWeightImplausible,
  tagUnquoted,
  groupClassMismatch,
  methodWithoutKill,
  slaughteredByBarbiturate,
  basisContradictsDeath,
  bornDeadContradiction,
  freshYetAutolysed,
  signsNoneAndMore,
  signImpossible,
  wastingYetFat,
  mummyCultured,
  ...timingRules,
  ...samplingRules,
  datesOutOfOrder,
  dateImpossible,
  brainDestroyed,
  groupUnknown,
  duplicateCase,
  duplicateTag,
  visitCaseAbsent,
  caseNotInVisit,
  fewPigsForSyndrome,
  smallRandomSample,
  clinicalPigsOnePen,
  clinicalPigsOneLitter,
  noAcuteUntreatedPig,
  noHealthyComparison,
  twoReaders,
  organNeverExamined,
  caseDayOffVisit,
  caseListMissing,
  photoAbsent,
  tracingAbsent,
  pictureElsewhere,
  photoOrganUnknown,
  photoWithoutSubject,
  lesionWithoutPhoto,
  photoWithoutScale,
  photoInTwoCases,
  diagnosisWithoutOrgan,
  diagnosisWithoutDegree,
  diagnosisWithoutLesion,
  diseaseAsLesion,
  causeWithoutLaboratory,
  causeWithoutDifferentials,
  progressiveWithoutToxin,
  pendingAgainstBasis,
  pendingWithoutSample,
  interpretationInDescription,
  simileInDescription,
  markedLesionUndiagnosed,
  diagnosisAgainstSeverity,
  parcelPrimaryLeaks,
  parcelWithoutAbsorbent,
  parcelWithoutSecondary,
  parcelOuterSoft,
  parcelMarkMissing,
  parcelOuterTooSmall,
  parcelMarkTooSmall,
  airPrimaryTooLarge,
  airVolumeTooLarge,
  airWeightTooLarge,
  parcelContactMissing,
  parcelFormMissing,
  parcelFormInside,
  parcelCoolantInside,
  parcelPackingUnrecorded,
  dryIceWeightMissing,
  dryIceNotVented,
  formalinNotApart,
  parcelCategoryTooLow,
  parcelExemptThoughIll,
  parcelTooLateForCulture,
  parcelSampleUnknown,
  sampleInNoParcel,
  sampleInTwoParcels,
  parcelBeforeSample,
  parcelArrivesBeforeSent,
  parcelWithoutSamples,
  parcelNotCooled,
  frozenSampleOnColdPacks,
  formalinOnDryIce,
  sawWithoutMask,
  eyesUnprotected,
  glovesMissing,
  knifeHandBare,
  abortionWithoutMask,
  formalinIndoors,
  formalinHandlingUnrecorded,
  formalinDenied,
  liftedAlone,
  alarmSignRecorded,
  parcelDuringAlarm,
  alarmPattern,
  alarmExclude,
  alarmInHerd,
  alarmInHerdExclude,
  authorityBeforeDeath,
  authorityBeforeVisit,
  caseFormat,
  protocolUnknown,
  acceptedWithoutReason,
  acceptedUnused,
  acceptedUnknownRule,
  acceptedLockedRule,
];
