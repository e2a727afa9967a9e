import { agentsIn, isPending, type NamedCause, namedCauses } from "../../../record/index.ts";
import { type CaseRule, practice } from "../../rule.ts";

export const causeWithoutDifferentials: CaseRule = {
  id: "cause-without-differentials",
  scope: "case",
  family: "diagnosis",
  level: "note",
  summary: "An agent that the laboratory has not confirmed is listed with what else it could be.",
  protects: "A lone cause closes the case in everybody's head before the results are in.",
  lookAlike:
    "A cause that the eye proves (worms, mange, a fracture) is passed; one that the slide proves beyond doubt: add what it was told from under differentials.",
  source: practice("common practice of diagnosis"),
  bad: { case: "diagnosis: {aetiologic: [Mycoplasma hyopneumoniae], basis: histology}" },
  good: {
    case: "diagnosis: {aetiologic: [Mycoplasma hyopneumoniae], basis: histology, differentials: [influenza A virus]}",
  },
  check(one, report) {
    const { diagnosis } = one.record;
    if (diagnosis?.aetiologic === undefined) return;
    const { differentials = [] } = diagnosis;
    if (differentials.length > 0) return;
    // On gross grounds alone the cause itself is what is wrong, and another rule says so.
    const isOpen = ({ basis }: NamedCause): boolean =>
      basis !== "laboratory" && (basis === "histology" || isPending(one));
    const cause = namedCauses(one).find((named) => isOpen(named) && agentsIn(named).length > 0);
    if (cause !== undefined)
      report(
        `"${cause.text}" stands alone, and the laboratory has not confirmed it. List under differentials what else could look like this.`,
        cause.path,
      );
  },
};
