import { interpretationWords } from "../../../knowledge/index.ts";
import { wordIn } from "../../../notes/index.ts";
import { isCalledProgressive, isPending, namedCauses } from "../../../record/index.ts";
import { type CaseRule, verified } from "../../rule.ts";

export const causeWithoutLaboratory: CaseRule = {
  id: "cause-without-laboratory",
  scope: "case",
  family: "diagnosis",
  level: "warning",
  summary: "A cause is named once the laboratory has shown it.",
  protects:
    "What looks like one agent may be any of three; the herd is vaccinated against the one that was written down.",
  lookAlike:
    "What the eye alone can prove is passed in words such as worms, mange, torsion, trauma or crushing; starved or overlain go into the comment, or are accepted.",
  source: verified(
    "Luppi et al. 2023, Animals 13:338: agents occur without disease, so histology decides; common practice",
  ),
  bad: {
    case: "diagnosis: {aetiologic: [Mycoplasma hyopneumoniae], basis: gross, differentials: [influenza A virus]}",
  },
  good: {
    case: "diagnosis: {aetiologic: [pending], basis: pending, differentials: [Mycoplasma hyopneumoniae, influenza A virus]}",
  },
  check(one, report) {
    if (one.record.diagnosis?.aetiologic === undefined) return;
    const { basis } = one.record.diagnosis;
    if (basis === "laboratory" || basis === "histology" || isPending(one)) return;
    for (const { text, path } of namedCauses(one))
      if (wordIn(text, interpretationWords.seen_at_table) === undefined && !isCalledProgressive(text))
        report(
          `"${text}" is a cause, and diagnosis.basis is ${basis ?? "blank"}. Write pending until the laboratory has answered, or basis: laboratory if it has.`,
          path,
        );
  },
};
