import { type Case, formatPath } from "../../../cases/index.ts";
import { description, type Process } from "../../../knowledge/index.ts";
import {
  findingsOf,
  isUnasked,
  measuresOf,
  type PlacedFinding,
  processOf,
  saysHowMuch,
} from "../../../record/index.ts";
import { type CaseRule, type RuleRow, verified } from "../../rule.ts";

interface MissingField extends RuleRow {
  lacks(placed: PlacedFinding, one: Case): boolean;
  /** What to ask, and what to write. */
  asks(placed: PlacedFinding): string;
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
  const isWeighed = finding.process === "enlargement" || finding.process === "atrophy";
  return (
    observed.some((key) => entry[key] !== undefined) ||
    (isWeighed && (entry.weight !== undefined || entry.size !== undefined))
  );
}

/** Whether it is said, or means nothing, how the lesion lies: by its site, its number, one size, or the kind of the organ. */
const isPlaced = ({ organ, finding }: PlacedFinding): boolean =>
  processOf(finding).distribution === "no" ||
  organ.definition.kind !== undefined ||
  [finding.distribution, finding.site, finding.number, finding.size, finding.volume].some(
    (told) => told !== undefined,
  );

const isMeasured = (placed: PlacedFinding): boolean => saysHowMuch(placed.finding) || isObserved(placed);

const examples = {
  extent: "extent: 20 %",
  size: "size: 25 mm",
  number: "number: 4",
  volume: "volume: 40 ml",
} as const;

const rows: readonly MissingField[] = [
  {
    id: "finding-without-distribution",
    level: "error",
    summary: "A finding says how the lesion is distributed in the organ, where that means something.",
    protects:
      "Focal, cranioventral and miliary lesions of the same kind have different causes; without a distribution the finding points to none of them.",
    source: verified("standard set of descriptive fields: Caswell & Plattner 2012, University of Guelph"),
    lookAlike:
      "A lesion whose site, number or one size is given, of a tube or a content, or of a region so small that its name says where, such as blood in the lumen or a navel: nothing is asked.",
    bad: { case: "lymphoid: {spleen: [{process: infarct, extent: 20 %}]}" },
    good: { case: "lymphoid: {spleen: [{process: infarct, distribution: multifocal, extent: 20 %}]}" },
    // Where nothing says how much there is, finding-without-size asks for both.
    lacks: (placed, one) =>
      !isUnasked(one, placed) && isMeasured(placed) && !isObserved(placed) && !isPlaced(placed),
    asks: ({ finding: { process } }) =>
      `${process} without a distribution. Write how the lesion is distributed in the organ, such as distribution: multifocal, or its site.`,
  },
  {
    id: "finding-without-size",
    level: "error",
    summary:
      "A finding says how much there is, where that means something: by a measure, its severity, or as diffuse.",
    protects: "A lesion without a measure cannot be compared between readers, pigs or visits.",
    source: verified(
      "size must be a number or a share of the organ: Macroscopic pathological study (teaching page; author and year not noted)",
    ),
    bad: { case: "lymphoid: {spleen: [{process: infarct, distribution: multifocal}]}" },
    good: { case: "lymphoid: {spleen: [{process: infarct, distribution: multifocal, number: 4}]}" },
    lookAlike:
      "A torsion, a rupture or an icterus, stains of dung, grazed skin, a dead fetus that is red: nothing is asked. What nobody measured has a severity.",
    lacks: (placed, one) => !isUnasked(one, placed) && !isMeasured(placed),
    asks: (placed) => {
      const [measure] = measuresOf(placed).map((field) => `${examples[field]} or `);
      const place = isPlaced(placed) ? "" : ", and how does it lie";
      const example = isPlaced(placed) ? "" : ", and distribution: multifocal or the site";
      return `how much ${placed.finding.process}${place}? Write ${measure ?? ""}severity: mild${example}.`;
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
    asks: ({ finding: { process } }) =>
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
    asks: ({ finding: { process } }) =>
      `what colour is the ${process}? Write one plain word, such as colour: tan.`,
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
    asks: ({ finding: { process } }) =>
      `how large is the ${process}? Measure the largest and write size: 12 mm.`,
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
      if (lacks(placed, one)) report(`${formatPath(placed.path)}: ${asks(placed)}`, placed.path);
  },
}));
