/** What a case says: each fact a question to the case or its visit, answered once. Knows no rules, scores or alarms. */
export { isCalledProgressive, isPending, morphologicDiagnoses, namedCauses } from "./diagnoses.ts";
export {
  areAllAfter,
  areAllBefore,
  areAllOfAnotherYear,
  brainOut,
  type DatedEvent,
  frozenTooSoon,
  isDeathTooEarly,
  isMisdated,
  isOpeningTooLate,
  isVisitMisdated,
  misdatedSamples,
  openedPigs,
  soundStepAt,
  stepsBeforeDeath,
  takenBeforeOpening,
  takenTooLate,
  yearSlips,
} from "./doubtful-times.ts";
export { fact } from "./fact.ts";
export { lobes, lungRegions } from "./lungs.ts";
export {
  isAmong,
  isContaminated,
  isFromOutside,
  isGut,
  isMaterial,
  isTissue,
  materialTitle,
  nearestMaterial,
  type Sample,
} from "./materials.ts";
export { extentPercent, hasMeasure, sizesMm, volumeMl } from "./measures.ts";
export { closedOrgans, namedOrgans, namedSide, namesBoth } from "./named-organs.ts";
export { exampleOf, type MissingObservation, missingObservations, missingTitle } from "./observations.ts";
export {
  findingsOf,
  isLesion,
  lesionPath,
  lesions,
  notExamined,
  type PlacedFinding,
  statesOf,
} from "./organs.ts";
export {
  answer,
  isFresh,
  isShipped,
  type Parcel,
  type PlacedParcel,
  parcelsOf,
  samplesIn,
} from "./parcels.ts";
export { besideCase, isAbsent, isElsewhere, photographs, tracings } from "./photographs.ts";
export { formalinSamples, isNotWorn, sawn } from "./protection.ts";
export {
  type IndexedSample,
  isFixed,
  isFor,
  isForAgents,
  isFreshTissue,
  isSampled,
  isSentWhole,
  isTissueSample,
  piecesOf,
  samplesOf,
} from "./samples.ts";
export { type FreeText, freeTextsOf, freeTextsOfVisit, notesOfOrgans, textsOf } from "./texts.ts";
export {
  diedAt,
  hoursAfterDeath,
  hoursBetween,
  hoursIll,
  isIllBeforeBirth,
  isSampledAfter,
  isUntreated,
  openedAt,
  sampleAt,
  spell,
} from "./times.ts";
export { type Conchae, conchae, stainedByDust } from "./turbinates.ts";
export {
  clinicalPigs,
  type GroupOfVisit,
  groupsOf,
  oneOrigin,
  showsSigns,
  signsOf,
  submissionSource,
  syndromes,
} from "./visit.ts";
