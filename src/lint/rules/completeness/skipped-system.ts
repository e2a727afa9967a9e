import { type Case, pathOf } from "../../../cases/index.ts";
import { type BlankSystem, blankSystems } from "../../../record/index.ts";
import { listing } from "../../../words/listing.ts";
import { type CaseRule, verified } from "../../rule.ts";

/** `urinary system (kidneys and bladder)` */
const named = ({ title, must }: BlankSystem): string =>
  `${title.toLowerCase()} (${listing(must.map(({ key }) => key))})`;

export const skippedSystem: CaseRule = {
  id: "skipped-system",
  scope: "case",
  family: "completeness",
  level: "error",
  summary: "Every system with organs that must be examined has at least one of them recorded.",
  protects: "A system that nobody looked at may be where the cause was missed; blank is never normal.",
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
    const ids = blank.map(({ id }) => id).join(", ");
    report(
      `nothing is recorded of: ${blank.map(named).join("; ")}. Write "normal: [${ids}]" at the top of the case for those that were examined and are normal, and "not_examined: [{systems: [${ids}], because: why}]" for the others.`,
      pathOf(first.id),
      "key",
    );
  },
};
