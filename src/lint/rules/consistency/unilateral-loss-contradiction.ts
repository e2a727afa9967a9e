import { formatPath } from "../../../cases/index.ts";
import { type Conchae, conchae, lesions, notesOfOrgans } from "../../../record/index.ts";
import { type CaseRule, practice } from "../../rule.ts";

export const unilateralLossContradiction: CaseRule = {
  id: "unilateral-loss-contradiction",
  scope: "case",
  family: "consistency",
  level: "warning",
  summary: "Atrophy that is called one-sided is not graded on both sides.",
  protects:
    "A one-sided loss comes from a blow, a growth or a bad cut; a two-sided one from the room. The words and the grades point to different causes.",
  lookAlike:
    "Much loss on one side and a little on the other may still be called one-sided, and a one-sided discharge or septum is no loss: both are passed.",
  source: practice("meaning of the words; the limit is the project's own choice"),
  bad: {
    case: 'respiratory: {turbinates: {left: {dorsal: 1, ventral: 3}, right: {dorsal: 1, ventral: 3}, grades: , note: "atrophy, unilateral left"}}',
  },
  good: {
    case: 'respiratory: {turbinates: {left: {dorsal: 1, ventral: 3}, right: {dorsal: 0, ventral: 0}, grades: , note: "atrophy, unilateral left"}}',
  },
  check(one, report) {
    const nose = conchae(one);
    if (nose === undefined || !isTwoSided(nose)) return;
    const words = notesOfOrgans(one).filter(
      ({ text, name }) => name.startsWith("respiratory.turbinates") && saysOneSided(text),
    );
    const called = lesions(one, { processes: ["atrophy"], organs: ["respiratory.turbinates"] }).flatMap(
      ({ finding: { distribution, side }, path }) => {
        if (distribution === "unilateral") return [{ text: "unilateral", path: [...path, "distribution"] }];
        return side === "left" || side === "right" ? [{ text: side, path: [...path, "side"] }] : [];
      },
    );
    for (const { text, path } of [...called, ...words])
      report(
        `${formatPath(path)}: "${text}", yet both sides show loss (left ${sideText(nose.left)}, right ${sideText(nose.right)}). Correct the word or the grades.`,
        path,
      );
  },
};

/** From here on the loss of a concha is one that nobody overlooks. */
const plainLoss = 2;

const worst = ({ dorsal = 0, ventral = 0 }: Conchae["left"]): number => Math.max(dorsal, ventral);

/** A plain loss on both sides, or the same slight one: a little beside much may still be called one-sided. */
function isTwoSided({ left, right }: Conchae): boolean {
  const [ofLeft, ofRight] = [worst(left), worst(right)];
  return Math.min(ofLeft, ofRight) >= plainLoss || (ofLeft > 0 && ofLeft === ofRight);
}

const oneSided =
  /\b(?:unilateral|one[\s-]sided|one side only|(?:left|right) (?:side )?only|only (?:on )?(?:the )?(?:left|right))\b/i;
const loss = /\b(?:atroph\w*|loss|lost|shrunken|shrunk)\b/i;
/** What else of a snout may be one-sided, and words that turn the sense. */
const other =
  /\b(?:scrolls?|dorsal|ventral|epithelium|mucosa|traced|measured|photo\w*|both|not|no|never|nor|without|discharge|exudate|pus|blood\w*|haemorrhag\w*|deviat\w*|septum|cut|sawn?|worse|more|mucus)\b/i;

/** Whether a sentence says that the loss is on one side, and speaks of nothing else. */
const saysOneSided = (text: string): boolean =>
  text.split(/[.;]/).some((part) => oneSided.test(part) && loss.test(part) && !other.test(part));

const sideText = ({ dorsal, ventral }: Conchae["left"]): string =>
  `dorsal ${dorsal ?? "blank"}, ventral ${ventral ?? "blank"}`;
