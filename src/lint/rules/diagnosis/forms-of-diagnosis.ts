import type { Case } from "../../../cases/index.ts";
import { vocabulary } from "../../../generated/knowledge.ts";
import { interpretationWords } from "../../../knowledge/index.ts";
import { wordIn } from "../../../notes/index.ts";
import {
  findingsOf,
  isCalledProgressive,
  lesionPath,
  type MorphologicDiagnosis,
  morphologicDiagnoses,
  statesOf,
} from "../../../record/index.ts";
import { listing } from "../../../words/listing.ts";
import { type CaseRule, fromMemory, practice, type RuleRow } from "../../rule.ts";

interface FormOfDiagnosis extends RuleRow {
  /** What the diagnosis lacks or should not name, and what to write. */
  says(diagnosis: MorphologicDiagnosis, one: Case): string | undefined;
}

const form = fromMemory("form of the morphologic diagnosis in veterinary pathology teaching, from memory");

const degrees = [...vocabulary.severity, ...vocabulary.duration, "slight", "severe"];

const rows: readonly FormOfDiagnosis[] = [
  {
    id: "diagnosis-without-degree",
    level: "note",
    summary: "A morphologic diagnosis says how severe it is, or how old.",
    protects:
      "A minimal old scar and the pneumonia that killed the pig read the same without a word on severity and age.",
    lookAlike:
      "A finding of that organ that has a severity says it already. A state without degree, such as agenesis or a torsion: a comma and one more word, complete or left, make it a full diagnosis.",
    source: form,
    bad: { case: 'diagnosis: {morphologic: ["Lungs: bronchopneumonia"]}' },
    good: {
      case: 'diagnosis: {morphologic: ["Lungs: bronchopneumonia, cranioventral, subacute, moderate"]}',
    },
    // One word behind the colon is a diagnosis that stops where it should begin.
    says({ place, rest, organs }, one) {
      if (place === undefined || rest.includes(",") || wordIn(rest, degrees) !== undefined) return undefined;
      const isGraded = findingsOf(one).some(
        ({ organ, finding }) => organs.includes(organ) && finding.severity !== undefined,
      );
      if (isGraded) return undefined;
      return `"${rest}" says neither how severe nor how old. Add distribution, duration and severity, such as cranioventral, subacute, moderate.`;
    },
  },
  {
    id: "diagnosis-without-lesion",
    level: "warning",
    summary: "A morphologic diagnosis rests on a lesion that is described.",
    protects: "A name without a description cannot be checked, scored or doubted by the next reader.",
    lookAlike:
      "A diagnosis of what was not there: begin it with no (Stomach: no content), and it is none. A lesion that the microscope alone showed: accept it.",
    source: practice("general gross pathology teaching: describe, then name"),
    bad: { case: 'diagnosis: {morphologic: ["Liver: hepatitis, interstitial, multifocal, chronic, mild"]}' },
    good: {
      case: 'diagnosis: {morphologic: ["Lungs: bronchopneumonia, cranioventral, subacute, moderate"]}',
    },
    says({ place, organs }, one) {
      const isDescribed = organs.some((organ) =>
        statesOf(one, organ).some((state) => lesionPath(one, organ, state) !== undefined),
      );
      if (organs.length === 0 || isDescribed) return undefined;
      const ids = organs.slice(0, 3).map(({ id }) => id);
      return `${place}: the diagnosis names a lesion and none is described under ${listing(ids, "or")}. Describe it there, or take the diagnosis out.`;
    },
  },
  {
    id: "disease-as-lesion",
    level: "warning",
    summary: "A morphologic diagnosis names the lesion, not the disease or its agent.",
    protects:
      "The eye sees a bronchopneumonia; the agent is a guess that hides the other guesses, and in a table it looks proven.",
    lookAlike:
      "Words that deny, as in no swine fever, are passed; a disease that names its own lesion, such as mulberry heart, is written as the lesion and stands under differentials.",
    source: interpretationWords.source,
    bad: { case: 'diagnosis: {morphologic: ["Lungs: enzootic pneumonia, moderate"]}' },
    good: {
      case: 'diagnosis: {morphologic: ["Lungs: bronchopneumonia, cranioventral, subacute, moderate"], differentials: [enzootic pneumonia, influenza]}',
    },
    says({ said: text }) {
      const word = wordIn(text, interpretationWords.diseases);
      return word !== undefined && !isCalledProgressive(text)
        ? `"${word}" is a disease or an agent. Name the lesion here, and write ${word} under differentials, or under aetiologic once the laboratory has shown it.`
        : undefined;
    },
  },
];

/** What a morphologic diagnosis must say, and what it must not. */
export const formsOfDiagnosis: readonly CaseRule[] = rows.map(({ says, ...rule }) => ({
  ...rule,
  scope: "case",
  family: "diagnosis",
  check(one, report) {
    if (one.record.diagnosis?.morphologic === undefined) return;
    for (const diagnosis of morphologicDiagnoses(one)) {
      const text = says(diagnosis, one);
      if (text !== undefined) report(text, diagnosis.path);
    }
  },
}));
