import { type Finding, formatPath } from "../../../cases/index.ts";
import { description } from "../../../knowledge/index.ts";
import { findingsOf, hasMeasure } from "../../../record/index.ts";
import { type CaseRule, type RuleRow, verified } from "../../rule.ts";

interface MissingField extends RuleRow {
  lacks(finding: Finding): boolean;
  /** What to ask, and what to write. */
  asks(process: string): string;
}

/** Whether a field is missing without which this process says little. */
function needed(field: keyof typeof description.needs): (finding: Finding) => boolean {
  const processes: ReadonlySet<string> = new Set(description.needs[field]);
  // Where there is no measure at all, finding-without-size asks for one.
  const isMeasure = field === "volume" || field === "size";
  return (finding) =>
    finding[field] === undefined && processes.has(finding.process) && (!isMeasure || hasMeasure(finding));
}

const rows: readonly MissingField[] = [
  {
    id: "finding-without-distribution",
    level: "error",
    summary: "Every finding says how the lesion is distributed in the organ.",
    protects:
      "Focal, cranioventral and miliary lesions of the same kind have different causes; without a distribution the finding points to none of them.",
    source: verified("standard set of descriptive fields: Caswell & Plattner 2012, University of Guelph"),
    bad: { case: "lymphoid: {spleen: [{process: infarct, size: 8 mm}]}" },
    good: { case: "lymphoid: {spleen: [{process: infarct, distribution: multifocal, size: 8 mm}]}" },
    lacks: ({ distribution }) => distribution === undefined,
    asks: (process) =>
      `${process} without a distribution. Write how the lesion is distributed in the organ, such as distribution: multifocal.`,
  },
  {
    id: "finding-without-size",
    level: "error",
    summary: "Every finding says how much there is: extent, size, number or volume.",
    protects: "A lesion without a measure cannot be compared between readers, pigs or visits.",
    source: verified(
      "size must be a number or a share of the organ: Macroscopic pathological study (teaching page; author and year not noted)",
    ),
    bad: { case: "lymphoid: {spleen: [{process: infarct, distribution: multifocal}]}" },
    good: { case: "lymphoid: {spleen: [{process: infarct, distribution: multifocal, number: 4}]}" },
    lacks: (finding) => !hasMeasure(finding),
    asks: (process) =>
      `${process} without a measure. Write extent: 20 %, size: 25 mm, number: 4 or volume: 40 ml.`,
  },
  {
    id: "fluid-without-volume",
    level: "warning",
    summary: "An effusion or a discharge has a volume.",
    protects:
      "A spoonful of clear fluid in a cavity is normal and a cupful is not; without millilitres nobody can tell.",
    source: description.source,
    bad: {
      case: "cardiovascular: {pericardium: [{process: effusion, distribution: diffuse, extent: 100 %, exudate: serous}]}",
    },
    good: {
      case: "cardiovascular: {pericardium: [{process: effusion, distribution: diffuse, volume: 15 ml, exudate: serous}]}",
    },
    lacks: needed("volume"),
    asks: (process) => `how much ${process}? Measure or estimate it and write volume: 15 ml.`,
  },
  {
    id: "exudate-without-word",
    level: "warning",
    summary: "An effusion, a discharge or an exudate says what kind it is.",
    protects:
      "Serous, fibrinous and suppurative exudates have different causes; fluid of no stated kind points nowhere.",
    source: description.source,
    bad: {
      case: "cardiovascular: {pericardium: [{process: effusion, distribution: diffuse, volume: 15 ml}]}",
    },
    good: {
      case: "cardiovascular: {pericardium: [{process: effusion, distribution: diffuse, volume: 15 ml, exudate: fibrinous}]}",
    },
    lacks: needed("exudate"),
    asks: (process) =>
      `what kind of ${process}? Write exudate: serous, catarrhal, fibrinous, suppurative, haemorrhagic …`,
  },
  {
    id: "colour-missing",
    level: "note",
    summary: "A lesion that is recognised by its colour has one.",
    protects: "Discolouration without a colour says only that something looked odd.",
    source: description.source,
    bad: {
      case: "liver_pancreas: {liver: [{process: discolouration, distribution: diffuse, extent: 90 %}]}",
    },
    good: {
      case: "liver_pancreas: {liver: [{process: discolouration, distribution: diffuse, extent: 90 %, colour: tan}]}",
    },
    lacks: needed("colour"),
    asks: (process) => `what colour is the ${process}? Write one plain word, such as colour: tan.`,
  },
  {
    id: "lump-without-size",
    level: "warning",
    summary: "An abscess, nodule, mass or cyst has a size.",
    protects:
      "Number or extent alone does not tell a pea from an egg, and the next reader cannot say whether the lesion has grown.",
    source: description.source,
    bad: {
      case: "respiratory: {lungs: {findings: [{process: abscess, distribution: multifocal, number: 3}]}}",
    },
    good: {
      case: "respiratory: {lungs: {findings: [{process: abscess, distribution: multifocal, number: 3, size: 12 mm}]}}",
    },
    lacks: needed("size"),
    asks: (process) => `how large is the ${process}? Measure the largest and write size: 12 mm.`,
  },
];

/** Fields that a finding must not lack. */
export const missingFields: readonly CaseRule[] = rows.map(({ lacks, asks, ...rule }) => ({
  ...rule,
  scope: "case",
  family: "description",
  check(one, report) {
    for (const { finding, path } of findingsOf(one))
      if (lacks(finding)) report(`${formatPath(path)}: ${asks(finding.process)}`, path);
  },
}));
