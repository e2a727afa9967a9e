/** Rules of the family consistency, in the order of the documentation. */
import type { Rule } from "../../rule.ts";
import { ageClassMismatch } from "./age-class-mismatch.ts";
import { basisContradictsDeath } from "./basis-contradicts-death.ts";
import { bornDeadContradiction } from "./born-dead-contradiction.ts";
import { brainDestroyed } from "./brain-destroyed.ts";
import { caudalLobesWorse } from "./caudal-lobes-worse.ts";
import { caudalPartContradictsLobe } from "./caudal-part-contradicts-lobe.ts";
import { consolidationWithoutLobes } from "./consolidation-without-lobes.ts";
import { crownRumpImplausible } from "./crown-rump-implausible.ts";
import { crownRumpOfBornPig } from "./crown-rump-of-born-pig.ts";
import { dateImpossible } from "./date-impossible.ts";
import { datesOutOfOrder } from "./dates-out-of-order.ts";
import { distributionContradictsLobes } from "./distribution-contradicts-lobes.ts";
import { dorsalWorseThanVentral } from "./dorsal-worse-than-ventral.ts";
import { extentContradictsLobes } from "./extent-contradicts-lobes.ts";
import { freshYetAutolysed } from "./fresh-yet-autolysed.ts";
import { groupClassMismatch } from "./group-class-mismatch.ts";
import { groupUnknown } from "./group-unknown.ts";
import { methodWithoutKill } from "./method-without-kill.ts";
import { mummyCultured } from "./mummy-cultured.ts";
import { newbornNeverBreathed } from "./newborn-never-breathed.ts";
import { onsetBeforeBirth } from "./onset-before-birth.ts";
import { organImpossible } from "./organ-impossible.ts";
import { organWeightImplausible } from "./organ-weight-implausible.ts";
import { parityImpossible } from "./parity-impossible.ts";
import { penBeyondGroup } from "./pen-beyond-group.ts";
import { pleurisyAdhesionUnscored } from "./pleurisy-adhesion-unscored.ts";
import { pleurisyNoneAndMore } from "./pleurisy-none-and-more.ts";
import { protocolContradictsDeath } from "./protocol-contradicts-death.ts";
import { septumContradictsFinding } from "./septum-contradicts-finding.ts";
import { signImpossible } from "./sign-impossible.ts";
import { signsNoneAndMore } from "./signs-none-and-more.ts";
import { siteContradictsLobes } from "./site-contradicts-lobes.ts";
import { skullClosedYetOpened } from "./skull-closed-yet-opened.ts";
import { slaughteredByBarbiturate } from "./slaughtered-by-barbiturate.ts";
import { snoutGradeContradictsConchae } from "./snout-grade-contradicts-conchae.ts";
import { snoutGradesContradict } from "./snout-grades-contradict.ts";
import { stillbornBreathed } from "./stillborn-breathed.ts";
import { tagUnquoted } from "./tag-unquoted.ts";
import { temperatureImplausible } from "./temperature-implausible.ts";
import { unilateralLossContradiction } from "./unilateral-loss-contradiction.ts";
import { wastingYetFat } from "./wasting-yet-fat.ts";
import { weightImplausible } from "./weight-implausible.ts";

export const consistencyRules: readonly Rule[] = [
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
  protocolContradictsDeath,
  bornDeadContradiction,
  freshYetAutolysed,
  signsNoneAndMore,
  signImpossible,
  wastingYetFat,
  mummyCultured,
  datesOutOfOrder,
  onsetBeforeBirth,
  dateImpossible,
  brainDestroyed,
  skullClosedYetOpened,
  groupUnknown,
  penBeyondGroup,
  distributionContradictsLobes,
  unilateralLossContradiction,
];
