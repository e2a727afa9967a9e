import { agentsIn, isPending, namedCauses } from "../../../record/index.ts";
import { type CaseRule, verified } from "../../rule.ts";

export const causeWithoutLaboratory: CaseRule = {
  id: "cause-without-laboratory",
  scope: "case",
  family: "diagnosis",
  level: "warning",
  summary: "A virus, a bacterium or a poison is named as the cause once the laboratory has shown it.",
  protects:
    "What looks like one agent may be any of three; the herd is vaccinated against the one that was written down.",
  lookAlike:
    "A cause that the eye can prove, such as crushing by the sow, starvation, heat, worms or a torsion, is passed, for it names no virus, bacterium or poison.",
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
    if (isPending(one)) return;
    for (const cause of namedCauses(one)) {
      const { text, path, basis } = cause;
      if (basis === "laboratory" || basis === "histology" || basis === "pending") continue;
      const [agent] = agentsIn(cause);
      if (agent !== undefined)
        report(
          `"${text}" is ${agent.title}, and diagnosis.basis is ${basis ?? "blank"}. Write pending until the laboratory has answered, or basis: laboratory if it has.`,
          path,
        );
    }
  },
};
