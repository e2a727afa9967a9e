/** Samples, and what laboratories answered. */
import { quantity } from "../cases/index.ts";
import { portablePath } from "../formats/page/portable-path.ts";
import { organs as anatomy, sampleRules, systems } from "../knowledge/index.ts";
import {
  hoursAfterDeath,
  type PlacedResult,
  pigsOf,
  resultsOf,
  type Sample,
  samplesOf,
  takenSamples,
} from "../record/index.ts";
import { limits, measured, type OfCase, ofCase, ofVisit, visitPlace } from "./places.ts";
import {
  asFlag,
  code,
  codes,
  day,
  flag,
  id,
  ids,
  integer,
  moments,
  named,
  number,
  type Placed,
  type TabledFolder,
  table,
  text,
} from "./table.ts";

const materials = [
  ...anatomy.map((organ) => organ.id),
  ...systems.map((system) => system.id),
  ...Object.keys(sampleRules.materials),
];

/** Units that laboratories write and that name nobody (common practice). */
const commonUnits = [
  "1",
  "%",
  "mg/kg",
  "µg/kg",
  "g/kg",
  "mg/l",
  "µg/l",
  "g/l",
  "mmol/l",
  "µmol/l",
  "U/l",
  "CFU/g",
  "CFU/ml",
  "copies/ml",
  "copies/g",
];

interface SampleRow extends OfCase {
  readonly sample: Sample;
}

export const samples = table<SampleRow>({
  name: "samples",
  title: "One row a sample that was taken",
  key: [],
  fields: [
    id("case", "Case", "case: case", "case", ({ one }) => one.id),
    id(
      "sample",
      "Sample number, unique in its visit",
      "case: #sample.id",
      "sample",
      ({ sample }: SampleRow) => sample.id,
      visitPlace,
    ),
    named(
      "from",
      "System and organ, or material",
      "case: #sample.from",
      "material",
      materials,
      ({ sample }) => sample.from,
    ),
    code("side", "Side of the pig", "case: #sample.side", ({ sample }) => sample.side),
    code("into", "What it was put into", "case: #sample.into", ({ sample }) => sample.into),
    codes("tests", "Tests asked for", "case: #sample.for", ({ sample }) => sample.for),
    ...moments<SampleRow>("taken", "Taken", "case: #sample.at", ({ sample }) => sample.at),
    number(
      "after_death",
      "Time from death to the sample, else to the opening",
      "worked out: its time",
      "h",
      ({ one, sample }) => hoursAfterDeath(one, sample),
    ),
    number("thickness", "Thickness of a fixed piece", "case: #sample.thickness", "mm", ({ sample }) =>
      quantity("length", sample.thickness),
    ),
    number("mass", "Amount, by weight", "case: #sample.amount", "kg", ({ sample }) =>
      quantity("mass", sample.amount),
    ),
    number("volume", "Amount, by volume", "case: #sample.amount", "l", ({ sample }) =>
      quantity("volume", sample.amount),
    ),
    number(
      "formalin_ratio",
      "Parts of formalin to one of tissue",
      "case: #sample.formalin_ratio",
      undefined,
      ({ sample }) => sample.formalin_ratio,
    ),
    flag("lumen_opened", "Whether a piece of gut was slit", "case: #sample.lumen_opened", ({ sample }) =>
      asFlag(sample.lumen_opened),
    ),
    flag(
      "clotted",
      "Whether blood had clotted before it was chilled",
      "case: #sample.clotted",
      ({ sample }) => asFlag(sample.clotted),
    ),
    id(
      "bag",
      "Bag or pot that it shares",
      "case: #sample.bag",
      "bag",
      ({ sample }: SampleRow) => sample.bag,
      visitPlace,
    ),
    ids(
      "pooled_with",
      "Other cases in the same container",
      "case: #sample.pooled_with",
      "case",
      ({ sample }) => sample.pooled_with,
    ),
    text("site", "Where in the organ", "case: #sample.site", ({ sample }) => sample.site),
    text("note", "Note", "case: #sample.note", ({ sample }) => sample.note),
  ],
  rows: ({ cases }) =>
    cases.flatMap((one) => {
      const place = ofCase(one);
      return samplesOf(one).map(({ sample }) => ({ ...place, sample }));
    }),
});

interface ResultRow extends Placed {
  readonly result: PlacedResult;
  readonly number: number;
  readonly cases: readonly string[];
}

/** The results of a visit, numbered in the order of their files. */
function resultRows({ visit }: TabledFolder): ResultRow[] {
  if (visit === undefined) return [];
  const place = ofVisit(visit);
  const taken = takenSamples(visit);
  return resultsOf(visit).map((result, index) => ({
    ...place,
    result,
    number: index + 1,
    cases: pigsOf(result, taken),
  }));
}

const resultNumber = <Source extends ResultRow>() =>
  integer<Source>(
    "result",
    "Which of the visit, counted from 1",
    "worked out: its place",
    ({ number: which }) => which,
  );
const atPlace = (row: Placed): string => visitPlace(row);
const firstLaboratory = ({ result }: ResultRow) => result.file.record.laboratory;

export const results = table<ResultRow>({
  name: "results",
  title: "One row a result: of a sample or a pool, one test, one agent or analyte",
  key: [],
  fields: [
    resultNumber(),
    ids(
      "samples",
      "Samples that it is of",
      "results: #entry.sample",
      "sample",
      ({ result }: ResultRow) => result.samples,
      atPlace,
    ),
    ids("cases", "Cases whose material it is of", "worked out: the samples", "case", ({ cases }) => cases),
    flag("pool", "Whether samples were tested as one", "results: #entry.pool", ({ result }) => result.isPool),
    code("test", "Test", "results: #entry.test", ({ result }) => result.entry.test),
    code("agent", "Agent", "results: #entry.agent", ({ result }) => result.entry.agent),
    id(
      "analyte",
      "What was measured in place of an agent",
      "results: #entry.analyte",
      "analyte",
      ({ result }) => result.entry.analyte,
    ),
    number(
      "value",
      "The number that was measured",
      "results: #entry.value",
      undefined,
      ({ result }) => measured(result.entry.value).number,
    ),
    code(
      "value_limit",
      "What stands before that number where it is a limit",
      "results: #entry.value",
      ({ result }) => measured(result.entry.value).limit,
      limits,
    ),
    named(
      "unit",
      "Unit of the value",
      "results: #entry.unit",
      "unit",
      commonUnits,
      ({ result }) => result.entry.unit,
    ),
    number(
      "ct",
      "Cycle at which the PCR crossed its threshold",
      "results: #entry.ct",
      undefined,
      ({ result }) => result.entry.ct,
    ),
    number(
      "cut_off",
      "Limit between positive and negative",
      "results: #entry.cut_off",
      undefined,
      ({ result }) => result.entry.cut_off,
    ),
    code(
      "positive_is",
      "On which side of it is positive",
      "results: #entry.positive_is",
      ({ result }) => result.entry.positive_is,
    ),
    number(
      "titre",
      "Highest dilution that still reacts, 160 for 1:160",
      "results: #entry.titre",
      undefined,
      ({ result }) => measured(result.entry.titre).number,
    ),
    code(
      "titre_limit",
      "What stands before the titre where it is a limit",
      "results: #entry.titre",
      ({ result }) => measured(result.entry.titre).limit,
      limits,
    ),
    code(
      "interpretation",
      "What the laboratory makes of it",
      "results: #entry.interpretation",
      ({ result }) => result.entry.interpretation,
    ),
    day("reported", "Day of the result", "results: #entry.date", ({ result }) => result.date),
    day(
      "received",
      "Day on which the parcel arrived",
      "results: #laboratory.received",
      (row) => firstLaboratory(row)?.received,
    ),
    id(
      "laboratory",
      "Laboratory",
      "results: #laboratory.name",
      "laboratory",
      (row) => firstLaboratory(row)?.name,
    ),
    text("reference", "Number that the laboratory gave it", "results: #entry.reference", (row) => {
      const reference = row.result.entry.reference ?? firstLaboratory(row)?.reference;
      return reference === undefined ? undefined : String(reference);
    }),
    text("file", "File of the results", "path of the file", ({ result }) => portablePath(result.file.file)),
    text(
      "how",
      "How it was tested, in the words of the laboratory",
      "results: #entry.method",
      ({ result }) => result.entry.method,
    ),
    text("report", "The report in its own words", "results: #entry.text", ({ result }) => result.entry.text),
    text("note", "Note", "results: #entry.note", ({ result }) => result.entry.note),
  ],
  rows: resultRows,
});

interface DrugRow extends ResultRow {
  readonly drug: NonNullable<PlacedResult["entry"]["antibiogram"]>[number];
}

export const susceptibilities = table<DrugRow>({
  name: "susceptibilities",
  title: "One row a drug of an antibiogram",
  key: [],
  fields: [
    resultNumber(),
    code("agent", "Bacterium", "results: #entry.agent", ({ result }) => result.entry.agent),
    id("drug", "Drug", "results: #drug.drug", "drug", ({ drug }) => drug.drug),
    number(
      "mic",
      "Minimum inhibitory concentration",
      "results: #drug.mic",
      "mg/l",
      ({ drug }) => measured(drug.mic).number,
    ),
    code(
      "mic_limit",
      "What stands before it where it is a limit",
      "results: #drug.mic",
      ({ drug }) => measured(drug.mic).limit,
      limits,
    ),
    number("zone", "Diameter of the zone", "results: #drug.zone", "mm", ({ drug }) =>
      quantity("length", drug.zone),
    ),
    code("category", "S, I or R", "results: #drug.category", ({ drug }) => drug.category),
    text("standard", "Standard of the breakpoints", "results: #drug.standard", ({ drug }) => drug.standard),
    integer("standard_year", "Its year", "results: #drug.year", ({ drug }) => drug.year),
  ],
  rows: (folder) =>
    resultRows(folder).flatMap((row) =>
      (row.result.entry.antibiogram ?? []).map((drug) => ({ ...row, drug })),
    ),
});
