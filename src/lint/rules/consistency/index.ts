/** Rules of the family consistency, in the order of the documentation. */

import type { Rule } from "../../rule.ts";
import { ageClassMismatch } from "./age-class-mismatch.ts";
import { brainDestroyed } from "./brain-destroyed.ts";
import { caudalLobesWorse } from "./caudal-lobes-worse.ts";
import { caudalPartContradictsLobe } from "./caudal-part-contradicts-lobe.ts";
import { consolidationContradictsLobes } from "./consolidation-contradicts-lobes.ts";
import { consolidationWithoutLobes } from "./consolidation-without-lobes.ts";
import { crownRumpImplausible } from "./crown-rump-implausible.ts";
import { dateImpossible } from "./date-impossible.ts";
import { datesOutOfOrder } from "./dates-out-of-order.ts";
import { deathContradictions } from "./death-contradictions.ts";
import { dorsalWorseThanVentral } from "./dorsal-worse-than-ventral.ts";
import { freshYetAutolysed } from "./fresh-yet-autolysed.ts";
import { groupClassMismatch } from "./group-class-mismatch.ts";
import { groupUnknown } from "./group-unknown.ts";
import { mummyCultured } from "./mummy-cultured.ts";
import { newbornNeverBreathed } from "./newborn-never-breathed.ts";
import { noneAndMore } from "./none-and-more.ts";
import { organImpossible } from "./organ-impossible.ts";
import { organWeightImplausible } from "./organ-weight-implausible.ts";
import { penBeyondGroup } from "./pen-beyond-group.ts";
import { pigContradictions } from "./pig-contradictions.ts";
import { pleurisyAdhesionUnscored } from "./pleurisy-adhesion-unscored.ts";
import { protocolContradictsDeath } from "./protocol-contradicts-death.ts";
import { septumContradictsFinding } from "./septum-contradicts-finding.ts";
import { skullClosedYetOpened } from "./skull-closed-yet-opened.ts";
import { snoutGradeContradictsConchae } from "./snout-grade-contradicts-conchae.ts";
import { snoutGradesContradict } from "./snout-grades-contradict.ts";
import { stillbornBreathed } from "./stillborn-breathed.ts";
import { tagUnquoted } from "./tag-unquoted.ts";
import { temperatureImplausible } from "./temperature-implausible.ts";
import { unilateralLossContradiction } from "./unilateral-loss-contradiction.ts";
import { weightImplausible } from "./weight-implausible.ts";

export const consistencyRules: readonly Rule[] = [
  weightImplausible,
  ageClassMismatch,
  organImpossible,
  stillbornBreathed,
  newbornNeverBreathed,
  consolidationWithoutLobes,
  ...consolidationContradictsLobes,
  caudalPartContradictsLobe,
  caudalLobesWorse,
  ...noneAndMore,
  pleurisyAdhesionUnscored,
  septumContradictsFinding,
  snoutGradeContradictsConchae,
  snoutGradesContradict,
  dorsalWorseThanVentral,
  temperatureImplausible,
  ...pigContradictions,
  crownRumpImplausible,
  organWeightImplausible,
  tagUnquoted,
  groupClassMismatch,
  ...deathContradictions,
  protocolContradictsDeath,
  freshYetAutolysed,
  mummyCultured,
  datesOutOfOrder,
  dateImpossible,
  brainDestroyed,
  skullClosedYetOpened,
  groupUnknown,
  penBeyondGroup,
  unilateralLossContradiction,
];
