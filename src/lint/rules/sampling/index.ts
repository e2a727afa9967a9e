/** Rules on sampling: containers, fixation, bags, numbers, and what belongs to a set. Part of the list in rules/index.ts. */

import type { Rule } from "../../rule.ts";
import { holdBack, leaveToAuthority } from "../../shared/silence.ts";
import { sampleOrganNotExamined } from "../consistency/sample-organ-not-examined.ts";
import { abortionSetSmall } from "./abortion-set-small.ts";
import { abortionWithoutPlacenta } from "./abortion-without-placenta.ts";
import { brainNotHalved } from "./brain-not-halved.ts";
import { containers } from "./containers.ts";
import { cultureOfTreatedPig } from "./culture-of-treated-pig.ts";
import { duplicateSample } from "./duplicate-sample.ts";
import { duplicateSampleInVisit } from "./duplicate-sample-in-visit.ts";
import { entericSetIncomplete } from "./enteric-set-incomplete.ts";
import { jointOnlyFixed } from "./joint-only-fixed.ts";
import { lesionNotSampled } from "./lesion-not-sampled.ts";
import { lungPiecesFew } from "./lung-pieces-few.ts";
import { meningitisWithoutFluid } from "./meningitis-without-fluid.ts";
import { oneOrganSampled } from "./one-organ-sampled.ts";
import { polyserositisLungOnly } from "./polyserositis-lung-only.ts";
import { poolUnnamed } from "./pool-unnamed.ts";
import { pooledWithUnknown } from "./pooled-with-unknown.ts";
import { sampleEntries } from "./sample-entries.ts";
import { sampleOrganAbsent } from "./sample-organ-absent.ts";
import { sharedBags } from "./shared-bags.ts";
import { toxicologyWithoutSource } from "./toxicology-without-source.ts";
import { toxinGeneNotAsked } from "./toxin-gene-not-asked.ts";
import { toxinTestMaterial } from "./toxin-test-material.ts";
import { toxinTestMisdated } from "./toxin-test-misdated.ts";

/** Faults of what was taken. */
const faults: readonly Rule[] = [
  ...containers,
  ...sampleEntries,
  ...sharedBags,
  pooledWithUnknown,
  poolUnnamed,
  duplicateSample,
  duplicateSampleInVisit,
  sampleOrganAbsent,
  sampleOrganNotExamined,
  cultureOfTreatedPig,
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
