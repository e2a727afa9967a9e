import { type Finding, formatPath } from "../../../cases/index.ts";
import { description, type Process } from "../../../knowledge/index.ts";
import { findingsOf, type PlacedFinding, processOf, saysHowMuch } from "../../../record/index.ts";
import { type CaseRule, type RuleRow, verified } from "../../rule.ts";

interface MissingField extends RuleRow {
  lacks(placed: PlacedFinding): boolean;
  /** What to ask, and what to write. */
  asks(finding: Finding): string;
}

/** Whether a field is missing without which this process says little. */
const needed =
  (field: NonNullable<Process["needs"]>[number]) =>
  ({ finding }: PlacedFinding): boolean =>
    finding[field] === undefined &&
    processOf(finding).needs?.includes(field) === true &&
    // Where nothing says how much there is, finding-without-size asks.
    (field !== "size" || saysHowMuch(finding));

/** Whether the entry of the organ says it: the lobes of a lung, the weight of a big spleen. */
function isObserved({ finding, state: { entry } }: PlacedFinding): boolean {
  if (entry === undefined) return false;
  const { observed = [] } = processOf(finding);
  const isMeasured = finding.process === "enlargement" || finding.process === "atrophy";
  return (
    observed.some((key) => entry[key] !== undefined) ||
    (isMeasured && (entry.weight !== undefined || entry.size !== undefined))
  );
}

const examples = {
  extent: "extent: 20 %",
  size: "size: 25 mm",
  number: "number: 4",
  volume: "volume: 40 ml",
  severity: "severity: mild",
  diffuse: "distribution: diffuse",
} as const;

const rows: readonly MissingField[] = [
  {
    id: "finding-without-distribution",
    level: "error",
    summary: "A finding says how the lesion is distributed in the organ, where that means something.",
    protects:
      "Focal, cranioventral and miliary lesions of the same kind have different causes; without a distribution the finding points to none of them.",
    lookAlike:
      "Blood or clots in the lumen lie nowhere: write them as a finding of the wall they came from, or as a note of the content.",
    source: verified("standard set of descriptive fields: Caswell & Plattner 2012, University of Guelph"),
    bad: { case: "lymphoid: {spleen: [{process: infarct, size: 8 mm}]}" },
    good: { case: "lymphoid: {spleen: [{process: infarct, distribution: multifocal, size: 8 mm}]}" },
    lacks: ({ finding }) => finding.distribution === undefined && processOf(finding).distribution !== "no",
    asks: ({ process }) =>
      `${process} without a distribution. Write how the lesion is distributed in the organ, such as distribution: multifocal.`,
  },
  {
    id: "finding-without-size",
    level: "error",
    summary:
      "A finding says how much there is, where that means something: by a measure, its severity, or as diffuse.",
    protects: "A lesion without a measure cannot be compared between readers, pigs or visits.",
    lookAlike:
      "A rupture, a torsion or an icterus has no amount and is passed; what nobody measured can have a severity or a number, for most lesions.",
    source: verified(
      "size must be a number or a share of the organ: Macroscopic pathological study (teaching page; author and year not noted)",
    ),
    bad: { case: "lymphoid: {spleen: [{process: infarct, distribution: multifocal}]}" },
    good: { case: "lymphoid: {spleen: [{process: infarct, distribution: multifocal, number: 4}]}" },
    lacks: (placed) => !saysHowMuch(placed.finding) && !isObserved(placed),
    asks: (finding) => {
      const [first, second] = processOf(finding).how_much.map((field) => examples[field]);
      return `how much ${finding.process}? Write ${first} or ${second}.`;
    },
  },
  {
    id: "exudate-without-word",
    level: "warning",
    summary: "An effusion, a discharge or an exudate says what kind it is.",
    protects:
      "Serous, fibrinous and suppurative exudates have different causes; fluid of no stated kind points nowhere.",
    lookAlike:
      "A trace of fluid that nobody drew: the look decides, clear is serous, red is haemorrhagic, slimy is catarrhal. Fluid that seeped in after death is an artefact.",
    source: description.source,
    bad: {
      case: "cardiovascular: {pericardium: [{process: effusion, distribution: diffuse, volume: 15 ml}]}",
    },
    good: {
      case: "cardiovascular: {pericardium: [{process: effusion, distribution: diffuse, volume: 15 ml, exudate: fibrinous}]}",
    },
    lacks: needed("exudate"),
    asks: ({ process }) =>
      `what kind of ${process}? Write exudate: serous, catarrhal, fibrinous, suppurative, haemorrhagic …`,
  },
  {
    id: "colour-missing",
    level: "note",
    summary: "A lesion that is recognised by its colour has one.",
    protects: "Discolouration without a colour says only that something looked odd.",
    lookAlike: "A lesion of the colour of the organ: write colour: unchanged, which is an answer.",
    source: description.source,
    bad: {
      case: "liver_pancreas: {liver: [{process: discolouration, distribution: diffuse, extent: 90 %}]}",
    },
    good: {
      case: "liver_pancreas: {liver: [{process: discolouration, distribution: diffuse, extent: 90 %, colour: tan}]}",
    },
    lacks: needed("colour"),
    asks: ({ process }) => `what colour is the ${process}? Write one plain word, such as colour: tan.`,
  },
  {
    id: "lump-without-size",
    level: "warning",
    summary: "An abscess, nodule, mass or cyst has a size.",
    protects:
      "Number or extent alone does not tell a pea from an egg, and the next reader cannot say whether the lesion has grown.",
    lookAlike:
      "Countless small ones: size is that of the largest; a cyst that burst as it was cut gets an estimate (size: 30 mm) and a note.",
    source: description.source,
    bad: {
      case: "respiratory: {lungs: {findings: [{process: abscess, distribution: multifocal, number: 3}]}}",
    },
    good: {
      case: "respiratory: {lungs: {findings: [{process: abscess, distribution: multifocal, number: 3, size: 12 mm}]}}",
    },
    lacks: needed("size"),
    asks: ({ process }) => `how large is the ${process}? Measure the largest and write size: 12 mm.`,
  },
];

/** Fields that a finding must not lack. */
export const missingFields: readonly CaseRule[] = rows.map(({ lacks, asks, ...rule }) => ({
  ...rule,
  scope: "case",
  family: "description",
  silent: "alarm",
  check(one, report) {
    for (const placed of findingsOf(one))
      if (lacks(placed)) report(`${formatPath(placed.path)}: ${asks(placed.finding)}`, placed.path);
  },
}));
