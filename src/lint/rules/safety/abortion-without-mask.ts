import { protection } from "../../../knowledge/index.ts";
import { isNotWorn, sawn } from "../../../record/index.ts";
import type { CaseRule } from "../../rule.ts";

export const abortionWithoutMask: CaseRule = {
  id: "abortion-without-mask",
  scope: "case",
  family: "safety",
  level: "warning",
  summary: "Gloves and mask are worn when fetuses, placentas or sows that aborted are opened.",
  protects:
    "Aborted tissue and fluids may carry Brucella suis and Leptospira, which people breathe in or take up by the skin.",
  source: {
    cite: "Purdue University, zoonoses of pigs (Brucella suis: aborted tissue, placenta, reproductive fluid)",
    confidence: "verified",
  },
  bad: {
    case: "pig: {class: finisher, age: 260 d, weight: 130 kg, group: finisher-1}\nselection: {signs: [abortion]}\ngenital: {ovaries: normal, uterus: normal}\nendocrine: {thyroid: normal}\nrespiratory: {turbinates: {section: , left: , right: , septum: , grades: , not_examined: snout left closed}}\nnervous: {meninges: {not_examined: skull left closed}, brain: {not_examined: skull left closed}}\nsafety: {protection: [gloves, cut-proof-glove, eye-protection, boots, overalls], formalin: open-air}",
  },
  good: {
    case: "pig: {class: finisher, age: 260 d, weight: 130 kg, group: finisher-1}\nselection: {signs: [abortion]}\ngenital: {ovaries: normal, uterus: normal}\nendocrine: {thyroid: normal}\nsafety: {protection: [gloves, cut-proof-glove, eye-protection, mask, boots, overalls], formalin: open-air}",
  },
  check(one, report) {
    const { classes, signs } = protection.reproductive;
    const isFetus = one.ageClass !== undefined && classes.includes(one.ageClass);
    if (!isFetus && !one.signs.some((sign) => signs.includes(sign))) return;
    // Bare hands and the mask of the saw have rules of their own; one finding a fault.
    if (isNotWorn(one, "mask") && sawn(one).length === 0)
      report(
        "safety.protection: material of an abortion, and no mask. It may carry Brucella suis; wear gloves and a mask of class FFP2 or better, and keep pregnant people away. If it was worn, add mask.",
        ["safety", "protection"],
      );
  },
};
