/** What was done at the table, and the protection that it calls for and that nobody wore. */
import type { Case } from "../../../cases/index.ts";
import { protection } from "../../../knowledge/index.ts";
import { formalinSamples, type ProtectiveItem, sawn, wentWithout } from "../../../record/index.ts";
import { listing } from "../../../words/listing.ts";
import { type CaseRule, fromMemory, type RuleRow, verified } from "../../rule.ts";

interface Unprotected extends RuleRow {
  readonly item: ProtectiveItem;
  /** What was done without it; undefined where nothing called for it. */
  done(one: Case): string | undefined;
  readonly advice: string;
}

const rows: readonly Unprotected[] = [
  {
    id: "saw-without-mask",
    level: "warning",
    summary: "A mask is worn when the skull or the snout is opened with a saw or an axe.",
    protects: "Saw spray is breathed in, and with it Streptococcus suis and influenza virus.",
    lookAlike:
      "The skull of a young piglet that was cut with scissors or a knife made no spray: accept the finding with that reason.",
    source: fromMemory(
      "common practice of protection at necropsy: FFP2 or better for brains, abortions and work with the saw; from memory",
    ),
    bad: {
      case: "safety: {protection: [gloves, cut-proof-glove, eye-protection, boots, overalls], formalin: open-air}",
    },
    good: {
      case: "safety: {protection: [gloves, cut-proof-glove, eye-protection, mask, boots, overalls], formalin: open-air}",
    },
    item: "mask",
    done: (one) => (isSawn(one) ? `${listing(sawn(one))} opened without a mask` : undefined),
    advice: "Wear one of class FFP2 or better whenever you use a saw or an axe; if it was worn",
  },
  {
    id: "eyes-unprotected",
    level: "warning",
    summary: "Eyes are protected when bone is sawn and when formalin is poured.",
    protects: "Bone chips and formalin blind.",
    lookAlike:
      "Glasses with side shields or a visor are eye-protection. A snout that was never sawn is not normal but not_examined, and then nothing was sawn.",
    source: verified(
      "Western Australia DPIRD, step-by-step guide to sampling and post-mortem of pigs (eye protection)",
    ),
    bad: {
      case: "safety: {protection: [gloves, cut-proof-glove, mask, boots, overalls], formalin: open-air}",
    },
    good: {
      case: "safety: {protection: [gloves, cut-proof-glove, eye-protection, mask, boots, overalls], formalin: open-air}",
    },
    item: "eye-protection",
    done(one) {
      const work = [...sawn(one), ...(formalinSamples(one) > 0 ? ["formalin"] : [])];
      return work.length === 0 ? undefined : `${listing(work)} handled without eye protection`;
    },
    advice: "Wear goggles or a visor; if they were worn",
  },
  {
    id: "gloves-missing",
    level: "warning",
    summary: "Waterproof gloves are worn at the table.",
    protects: "Streptococcus suis, Erysipelothrix and Leptospira enter through small wounds on the hands.",
    lookAlike:
      "Long sleeves of plastic, or double gloves: both are gloves. A record without safety.protection is not asked.",
    source: verified(
      "Dutkiewicz et al., Annals of Agricultural and Environmental Medicine (Streptococcus suis enters mainly by skin wounds)",
    ),
    bad: {
      case: "safety: {protection: [cut-proof-glove, eye-protection, mask, boots, overalls], formalin: open-air}",
    },
    good: {
      case: "safety: {protection: [gloves, cut-proof-glove, eye-protection, mask, boots, overalls], formalin: open-air}",
    },
    item: "gloves",
    done: () => "no gloves",
    advice: "Wear waterproof ones, and wash your hands and any cuts with soap; if they were worn",
  },
  {
    id: "knife-hand-bare",
    level: "note",
    summary: "A cut-proof glove is worn on the hand that does not hold the knife.",
    protects: "Most injuries at the table are cuts to that hand, and a cut lets in whatever the pig carries.",
    lookAlike:
      "Work without a knife, such as a look at plucks that others had opened: accept the note, or leave safety.protection out.",
    source: fromMemory(
      "common practice of protection at necropsy: a cut-proof glove on the hand without the knife; from memory",
    ),
    bad: {
      case: "safety: {protection: [gloves, eye-protection, mask, boots, overalls], formalin: open-air}",
    },
    good: {
      case: "safety: {protection: [gloves, cut-proof-glove, eye-protection, mask, boots, overalls], formalin: open-air}",
    },
    item: "cut-proof-glove",
    done: () => "no cut-proof glove",
    advice: "Wear one under the waterproof glove of the hand that does not hold the knife; if it was worn",
  },
  {
    id: "abortion-without-mask",
    level: "warning",
    summary: "Gloves and a mask are worn when fetuses, placentas or sows that have aborted are opened.",
    protects:
      "Aborted tissue and fluids may carry Brucella suis and Leptospira, which people breathe in or take up through the skin.",
    lookAlike:
      "A sow that aborted months ago and died of something else: leave abortion out of her signs, and write it into the history.",
    source: verified(
      "Purdue University, zoonoses of pigs (Brucella suis: aborted tissue, placenta, reproductive fluid)",
    ),
    bad: {
      case: "pig: {class: finisher, age: 260 d, weight: 130 kg, group: finisher-1}\nselection: {signs: [abortion]}\ngenital: {ovaries: normal, uterus: normal}\nendocrine: {thyroid: normal}\nrespiratory: {turbinates: {section: , left: , right: , septum: , grades: , not_examined: snout left closed}}\nnervous: {meninges: {not_examined: skull left closed}, brain: {not_examined: skull left closed}}\nsafety: {protection: [gloves, cut-proof-glove, eye-protection, boots, overalls], formalin: open-air}",
    },
    good: {
      case: "pig: {class: finisher, age: 260 d, weight: 130 kg, group: finisher-1}\nselection: {signs: [abortion]}\ngenital: {ovaries: normal, uterus: normal}\nendocrine: {thyroid: normal}\nsafety: {protection: [gloves, cut-proof-glove, eye-protection, mask, boots, overalls], formalin: open-air}",
    },
    item: "mask",
    // Bare hands and the mask for the saw have rules of their own: one finding for one fault.
    done: (one) =>
      isOfAbortion(one) && !isSawn(one) ? "abortion material handled without a mask" : undefined,
    advice:
      "It may carry Brucella suis: wear gloves and a mask of class FFP2 or better, and keep anybody who is pregnant away; if it was worn",
  },
];

const isSawn = (one: Case): boolean => sawn(one).length > 0;

function isOfAbortion({ ageClass, signs }: Case): boolean {
  const { classes, signs: ofAbortion } = protection.reproductive;
  return (
    (ageClass !== undefined && classes.includes(ageClass)) || signs.some((sign) => ofAbortion.includes(sign))
  );
}

export const protectionRules: readonly CaseRule[] = rows.map(({ item, done, advice, ...row }) => ({
  ...row,
  scope: "case",
  family: "safety",
  check(one, report) {
    if (!wentWithout(one, item)) return;
    const what = done(one);
    if (what !== undefined)
      report(`safety.protection: ${what}. ${advice}, add ${item}.`, ["safety", "protection"]);
  },
}));
