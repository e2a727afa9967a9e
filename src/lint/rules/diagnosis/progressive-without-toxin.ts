import { isCalledProgressive, morphologicDiagnoses, namedCauses } from "../../../record/index.ts";
import { type CaseRule, fromMemory } from "../../rule.ts";

export const progressiveWithoutToxin: CaseRule = {
  id: "progressive-without-toxin",
  scope: "case",
  family: "diagnosis",
  level: "warning",
  summary: "Atrophy of the conchae is called progressive only when the laboratory has shown the toxin.",
  protects:
    "Dust, ammonia and other organisms waste the conchae as well; a high grade is a reason to test for the toxin gene, and no proof of it.",
  lookAlike:
    "A toxin that was shown in this herd before: basis: laboratory, with the test of the herd under tests in visit.yaml. Without it, write atrophy and its degree.",
  source: fromMemory(
    "progressive atrophic rhinitis is defined by toxigenic Pasteurella multocida; from memory of the standard texts",
  ),
  bad: {
    case: 'diagnosis: {morphologic: ["Conchae: progressive atrophic rhinitis, bilateral, chronic, moderate"]}',
  },
  good: {
    case: 'diagnosis: {morphologic: ["Conchae: atrophy, bilateral, chronic, moderate"], differentials: [toxigenic Pasteurella multocida, dust and ammonia]}',
  },
  check(one, report) {
    const { diagnosis } = one.record;
    if (diagnosis === undefined || diagnosis.basis === "laboratory") return;
    const morphologic = morphologicDiagnoses(one).map(({ said, path }) => ({ text: said, path }));
    for (const { text, path } of [...morphologic, ...namedCauses(one)])
      if (isCalledProgressive(text))
        report(
          `"${text}" is called progressive on gross appearance alone. Write atrophy of the conchae with its degree, ask for the toxin gene of Pasteurella multocida, and set basis: laboratory when it is found.`,
          path,
        );
  },
};
