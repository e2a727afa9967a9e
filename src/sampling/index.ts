/** Samples: what each is worth, in the right container, in the right order, as a set. Knows no rules. */
export { amountOf, isFreshTissue, isTissueSample, type UnfitUse, unfitContainers } from "./container.ts";
export { type Band, bandOf, limitHours } from "./limits.ts";
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
} from "./material.ts";
export {
  type IndexedSample,
  isFixed,
  isFor,
  isForAgents,
  isSampled,
  isSentWhole,
  piecesOf,
  samplesOf,
} from "./sets.ts";
export {
  hoursAfterDeath,
  hoursBetween,
  isSampledAfter,
  type Step,
  sampleAt,
  spell,
  stepAt,
} from "./times.ts";
export { isToxinMaterial } from "./toxin-material.ts";
export {
  isFrozenHistology,
  sampleWorth,
  type Test,
  type TestWorth,
  type TimeWorth,
  timeWorth,
  type Worth,
} from "./worth.ts";
