import { type Case, pathOf } from "../../../cases/index.ts";
import { askedOfNormal, type BlankSystem, blankSystems } from "../../../record/index.ts";
import { listing } from "../../../words/listing.ts";
import { type CaseRule, verified } from "../../rule.ts";

/** `urinary system (kidneys and bladder)` */
const named = ({ title, must }: BlankSystem): string =>
  `${title.toLowerCase()} (${listing(must.map(({ key }) => key))})`;

const ids = (blank: readonly BlankSystem[]): string => blank.map(({ id }) => id).join(", ");

export const skippedSystem: CaseRule = {
  id: "skipped-system",
  scope: "case",
  family: "completeness",
  level: "error",
  summary: "Every system with organs that must be examined has at least one of them recorded.",
  protects: "A system that nobody looked at may be where the cause was missed; blank is never normal.",
  lookAlike:
    "A system looked at as one, or in which only the content was noted: write it as normal, or rest: normal beside what is recorded, or rest: {not_examined: why}.",
  source: verified(
    "Animal Health Laboratory, University of Guelph: wide organ lists even for a case of one system",
  ),
  bad: { case: "urinary:\nstomach:" },
  good: {
    case: "normal: [urinary]\nnot_examined: [{systems: [stomach], because: sent closed for toxicology}]\nurinary:\nstomach:",
  },
  check(one: Case, report) {
    const blank = blankSystems(one).filter(({ whole }) => whole);
    const [first] = blank;
    if (first === undefined) return;
    // Where something must be observed of a normal organ, the one word is no answer.
    const plain = blank.filter(({ must }) => must.every((organ) => askedOfNormal(one, organ).length === 0));
    const normal = `"normal: [${ids(plain)}]" at the top of the case`;
    const closed = `"not_examined: [{systems: [${ids(blank)}], because: why}]"`;
    const write =
      plain.length === 0
        ? `${closed} at the top of the case, or record each organ`
        : blank.length === 1
          ? `${normal} if it was examined and is normal, or ${closed}`
          : `${normal} for those that were examined and are normal, and ${closed} for the others`;
    report(
      `nothing is recorded of: ${blank.map(named).join("; ")}. Write ${write}.`,
      pathOf(first.id),
      "key",
    );
  },
};
