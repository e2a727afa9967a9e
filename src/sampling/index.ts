/** Samples: what each is worth, in the right container, in the right order, as a set. Knows no rules. */
export { amountOf, unfitContainers, unfitUse } from "./container.ts";
export { impossibleUse } from "./impossible.ts";
export { type LateSample, lateGutSamples, lateness, lateSamples } from "./late.ts";
export { bandOf } from "./limits.ts";
export { isToxinMaterial } from "./toxin-material.ts";
export {
  isDeepInGut,
  isFrozenHistology,
  sampleWorth,
  type TestWorth,
  timeWorth,
  type Worth,
} from "./worth.ts";
