import { type Conchae, conchae } from "../../../record/index.ts";
import { type CaseRule, verified } from "../../rule.ts";

export const dorsalWorseThanVentral: CaseRule = {
  id: "dorsal-worse-than-ventral",
  scope: "case",
  family: "consistency",
  level: "note",
  summary: "The ventral conchae lose more than the dorsal ones.",
  protects:
    "The other way round on both sides usually means a cut too far forward, or dorsal and ventral swapped.",
  lookAlike:
    "A blow, a tumour or a cut on the slant can take the dorsal conchae first: rare on both sides, so note what was seen and accept it.",
  source: verified("Polloni, Candotti, Ostanello & Leotti 2018 (ventral conchae scored higher than dorsal)"),
  bad: { case: "respiratory: {turbinates: {left: {dorsal: 2, ventral: 0}, right: {dorsal: 2, ventral: 1}}}" },
  good: {
    case: "respiratory: {turbinates: {left: {dorsal: 0, ventral: 2}, right: {dorsal: 1, ventral: 2}}}",
  },
  check(one, report) {
    const nose = conchae(one);
    if (nose === undefined) return;
    if (isUpsideDown(nose.left) && isUpsideDown(nose.right))
      report(
        "respiratory.turbinates: the dorsal conchae have lost more than the ventral ones on both sides, which is rare. Check the level of the section, and that dorsal and ventral were not swapped.",
        nose.path,
      );
  },
};

const isUpsideDown = ({ dorsal, ventral }: Conchae["left"]): boolean =>
  dorsal !== undefined && ventral !== undefined && dorsal > ventral;
