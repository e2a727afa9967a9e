import type { Case } from "../../../cases/index.ts";
import { diagnosisLimits, type PlacedOrgan } from "../../../knowledge/index.ts";
import { wordIn } from "../../../notes/index.ts";
import {
  findingsOf,
  isLesion,
  morphologicDiagnoses,
  namedSide,
  type PlacedFinding,
  sideInPath,
  whereOf,
} from "../../../record/index.ts";
import { type CaseRule, practice } from "../../rule.ts";

export const diagnosisAgainstFinding: CaseRule = {
  id: "diagnosis-against-finding",
  scope: "case",
  family: "diagnosis",
  // It contradicts the record, and asks for nothing more.
  silent: "never",
  level: "warning",
  summary:
    "A diagnosis is as severe, as old, as widespread and on the same side as the lesion that it names.",
  protects: "The table takes the one, and the report to the farmer the other.",
  lookAlike:
    "Histology that saw an older or wider lesion: with basis: histology or laboratory age and spread are not compared. Two diagnoses of one organ may each have their own lesion.",
  source: practice("common practice of reporting: the diagnosis repeats the words of the description"),
  bad: {
    case: 'liver_pancreas: {liver: [{process: necrosis, distribution: multifocal, size: 4 mm, colour: white, severity: marked}]}\nsamples: \ndiagnosis: {morphologic: ["Liver: necrosis, multifocal, acute, mild"]}',
  },
  good: {
    case: 'liver_pancreas: {liver: [{process: necrosis, distribution: multifocal, size: 4 mm, colour: white, severity: marked}]}\nsamples: \ndiagnosis: {morphologic: ["Liver: necrosis, multifocal, acute, marked"]}',
  },
  check(one, report) {
    if (one.record.diagnosis?.morphologic === undefined) return;
    const diagnoses = morphologicDiagnoses(one);
    for (const { organs, rest, text, path } of diagnoses) {
      const [organ] = organs;
      // Two diagnoses of one organ may each have a lesion of their own.
      if (organ === undefined || organs.length > 1) continue;
      if (diagnoses.filter((other) => other.organs.includes(organ)).length > 1) continue;
      const lesions = findingsOf(one).filter((entry) => entry.organ === organ && isLesion(entry.finding));
      const against = againstWords(one, rest, lesions) ?? againstSide(one, text, organ, lesions);
      if (against !== undefined) report(`"${text.trim()}" ${against}. Correct one of them.`, path);
    }
  },
};

const rows = Object.values(diagnosisLimits.against);

function againstWords({ record }: Case, rest: string, lesions: readonly PlacedFinding[]): string | undefined {
  const byMicroscope = record.diagnosis?.basis === "histology" || record.diagnosis?.basis === "laboratory";
  for (const { field, words, values, unless, microscope } of rows) {
    if (microscope === true && byMicroscope) continue;
    const said = wordIn(rest, words);
    if (said === undefined || wordIn(rest, unless) !== undefined) continue;
    const found = lesions.flatMap(({ finding }) => finding[field] ?? []);
    const [first] = found;
    if (first !== undefined && found.every((word) => values.includes(word)))
      return `says ${said}, but the finding under ${lesions[0]?.organ.id} is ${first}`;
  }
  return undefined;
}

/** The diagnosis names one side, and what is described lies on the other. */
function againstSide(
  one: Case,
  text: string,
  organ: PlacedOrgan,
  lesions: readonly PlacedFinding[],
): string | undefined {
  const said = namedSide(text);
  if (said === undefined || lesions.length === 0) return undefined;
  const sides = lesions.map(({ finding, path }) => sideInPath(path) ?? namedSide(whereOf(finding)));
  const other = said === "left" ? "right" : "left";
  const graded = Object.keys(organ.definition.observations ?? {}).some(
    (key) => one.organ(organ).entry?.[key] !== undefined,
  );
  return !graded && sides.every((side) => side === other)
    ? `says ${said}, but what is described under ${organ.id} lies on the ${other}`
    : undefined;
}
