/** What a case says: each fact a question to the case or its visit, answered once. Knows no rules, scores or alarms. */
export { type BlankSystem, blankSystems, isExcused, isLeftOut, isToldWith } from "./blank-organs.ts";
export {
  type Container,
  containerNames,
  containersOf,
  containersOfCase,
  containerTitles,
  testNames,
  testTitles,
} from "./containers.ts";
export {
  agentsIn,
  isAwaited,
  isCalledProgressive,
  isPending,
  type MorphologicDiagnosis,
  morphologicDiagnoses,
  type NamedCause,
  namedCauses,
  type StatedDiagnosis,
  statedDiagnoses,
  textOf,
} from "./diagnoses.ts";
export {
  areAllAfter,
  areAllBefore,
  areAllOfAnotherYear,
  brainOut,
  type DatedEvent,
  doubtfulSamples,
  frozenTooSoon,
  hasDoubtfulTimes,
  isDeathTooEarly,
  isOpeningTooLate,
  isVisitDateDoubtful,
  openedPigs,
  soundStepAt,
  stepsBeforeDeath,
  takenBeforeOpening,
  takenTooLate,
  yearSlips,
} from "./doubtful-times.ts";
export { fact } from "./fact.ts";
export { consolidations, type LungRegions, lobes, lungRegions } from "./lungs.ts";
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
export {
  extentPercent,
  isUnasked,
  measuresOf,
  processOf,
  saysHowMuch,
  sizesMm,
  volumeMl,
} from "./measures.ts";
export { closedOrgans, namedOrgans, namedSide, namesBoth, sideInPath, whereOf } from "./named-organs.ts";
export {
  askedOfNormal,
  exampleOf,
  type MissingObservation,
  missingObservations,
  missingTitle,
} from "./observations.ts";
export {
  entriesOf,
  findingsOf,
  findingWords,
  forbids,
  gradesOf,
  isLesion,
  isOfUnborn,
  type LesionQuestion,
  lesionPath,
  lesions,
  markedLesions,
  type PlacedEntry,
  type PlacedFinding,
  placedStates,
  statesOf,
} from "./organs.ts";
export {
  answer,
  isForLaboratory,
  isFresh,
  isMarkDue,
  isShipped,
  type Parcel,
  type PlacedParcel,
  packingDue,
  parcelsOf,
  samplesIn,
  unpackedSamples,
} from "./parcels.ts";
export { besideCase, isAbsent, isElsewhere, isOfUnknown, photographs, tracings } from "./photographs.ts";
export { formalinSamples, type ProtectiveItem, sawn, wentWithout } from "./protection.ts";
export { type RequiredFact, requiredFacts } from "./required-facts.ts";
export {
  askedOf,
  daysOpen,
  isOpen,
  type PlacedResult,
  pigsOf,
  placed,
  type Request,
  type ResultEntry,
  requestsOf,
  resultsOf,
  resultsOfCase,
  speaksOf,
  type TakenSample,
  takenSamples,
} from "./results.ts";
export {
  type IndexedSample,
  isFixed,
  isFor,
  isForAgents,
  isFreshTissue,
  isSampled,
  isSentClosed,
  isSentWhole,
  isTissueSample,
  samplesOf,
} from "./samples.ts";
export { eachText, type FreeText, freeTextsOf, freeTextsOfVisit, notesOfOrgans } from "./texts.ts";
export {
  acuteHours,
  diedAt,
  hoursAfterDeath,
  hoursBetween,
  hoursIll,
  isIllBeforeBirth,
  isLongStanding,
  isSampledAfter,
  isUntreated,
  openedAt,
  sampleAt,
  spell,
  stepAt,
} from "./times.ts";
export { type Conchae, conchae, stainedByDust } from "./turbinates.ts";
export {
  clinicalPigs,
  type GroupOfVisit,
  groupsOf,
  oneOrigin,
  showsSigns,
  signFamiliesOf,
  signsOf,
  submissionSource,
  syndromes,
} from "./visit.ts";
