/** Scores of pigs, and estimates over them. */
import { dirname } from "node:path";
import { herdRows } from "../formats/herd/csv.ts";
import type { CsvCell } from "../formats/page/csv.ts";
import { portablePath } from "../formats/page/portable-path.ts";
import { herdEstimates } from "../herd/index.ts";
import { agents, testWords } from "../knowledge/agents.ts";
import { ageClasses, organs as anatomy, indicators, scaleIds, selectionBases } from "../knowledge/index.ts";
import { scales } from "../knowledge/scales.ts";
import { type CaseScore, scoreCases } from "../score/index.ts";
import { type OfCase, ofCase, ofVisit } from "./places.ts";
import { code, flag, id, integer, named, nameds, number, type Placed, table, text } from "./table.ts";

const confidences = ["verified", "derived", "common-practice", "from-memory"];
const shipped = [...scales.values()];
const units = ["points", "share", ...shipped.flatMap(({ unit }) => unit ?? [])];

/** `pcr:mycoplasma-hyopneumoniae`, as herd names the results of laboratories. */
const resultIds = testWords.flatMap((test) => [...agents.keys()].map((agent) => `${test}:${agent}`));

interface ScoreRow extends OfCase {
  readonly score: CaseScore;
}

export const scores = table<ScoreRow>({
  name: "scores",
  title: "One row a pig and published scale, as carcase score computes it",
  key: ["case", "scale"],
  fields: [
    id("case", "Case", "case: case", "case", ({ one }) => one.id),
    code("organ", "Organ that was scored, or pig", "the scale", ({ score }) => score.organ, [
      ...anatomy.map((organ) => organ.id),
      "pig",
    ]),
    named("scale", "Scale", "the scale", "own", scaleIds, ({ score }) => score.scale),
    number(
      "value",
      "The score; empty where it cannot be told",
      "worked out: carcase score",
      undefined,
      ({ score }) => score.value ?? undefined,
    ),
    number(
      "least",
      "Least score that the observations allow",
      "worked out: carcase score",
      undefined,
      ({ score }) => score.bounds?.[0] ?? score.value ?? undefined,
    ),
    number(
      "greatest",
      "Greatest score that the observations allow",
      "worked out: carcase score",
      undefined,
      ({ score }) => score.bounds?.[1] ?? score.value ?? undefined,
    ),
    number("max", "Highest score of the scale", "the scale", undefined, ({ score }) => score.max),
    named("unit", "Unit of the score", "the scale", "unit", units, ({ score }) => score.unit ?? "points"),
    named(
      "class",
      "Class of the score",
      "the scale",
      "own",
      shipped.flatMap(({ classes = [] }) => classes.map((one) => one.name)),
      ({ score }) => score.class ?? undefined,
    ),
    flag(
      "from_grade",
      "Whether it was written down as a grade and not computed from parts",
      "worked out: carcase score",
      ({ score }) => score.from_grade === true,
    ),
    nameds(
      "missing",
      "Observations that the scale needs and the case does not have",
      "worked out: carcase score",
      "own",
      shipped.flatMap(readsOf),
      ({ score }) => score.missing,
    ),
    text("reason", "Why there is no score", "worked out: carcase score", ({ score }) => score.reason),
    code("confidence", "How sure the scale is", "the scale", ({ score }) => score.confidence, confidences),
    text("source", "Who published it", "the scale", ({ score }) => score.source),
  ],
  rows: ({ cases }) => {
    const known = new Map(cases.map((one) => [one.file, ofCase(one)]));
    return scoreCases(cases).cases.flatMap(({ file, scores: all }) => {
      const place = known.get(file);
      return place === undefined ? [] : all.map((score) => ({ ...place, score }));
    });
  },
});

/** Full paths of what a scale reads. */
function readsOf({ organ, parts, requires }: (typeof shipped)[number]): string[] {
  const reads = [...Object.values(parts).map(({ read }) => read), ...Object.keys(requires ?? {})];
  return reads.map((read) => `${organ}.${read}`);
}

type HerdRow = ReturnType<typeof herdRows>[number];

interface EstimateRow extends Placed {
  readonly row: HerdRow;
  readonly folder: string | undefined;
}

const wordOf = (cell: CsvCell | undefined): string | undefined =>
  cell === null || cell === undefined ? undefined : String(cell);
const numberOf = (cell: CsvCell | undefined): number | undefined =>
  typeof cell === "number" ? cell : undefined;

const figure = (name: keyof HerdRow & string, title: string) =>
  number<EstimateRow>(name, title, "worked out: carcase herd", undefined, ({ row }) => numberOf(row[name]));
const count = (name: keyof HerdRow & string, title: string) =>
  integer<EstimateRow>(name, title, "worked out: carcase herd", ({ row }) => numberOf(row[name]));

export const estimates = table<EstimateRow>({
  name: "estimates",
  title:
    "One row a number of carcase herd: by visit, group, age class and basis; results of laboratories by visit and basis",
  key: [],
  fields: [
    id(
      "folder",
      "Folder of cases that belong to no visit",
      "path of the folder",
      "folder",
      ({ folder }) => folder,
    ),
    id(
      "group",
      "Group",
      "case: pig.group",
      "group",
      ({ row }) => wordOf(row.group),
      ({ farm }) => farm,
    ),
    code(
      "age_class",
      "Age class",
      "case: pig.class",
      ({ row }) => wordOf(row.age_class),
      Object.keys(ageClasses.classes),
    ),
    code(
      "basis",
      "How the pigs were chosen",
      "case: selection.basis",
      ({ row }) => wordOf(row.basis),
      Object.keys(selectionBases),
    ),
    code(
      "measure",
      "What the number is: proportion, mean, median, or share_at_or_above_ a grade",
      "worked out: carcase herd",
      ({ row }) => wordOf(row.measure),
    ),
    named(
      "id",
      "Indicator, scale, or test and agent",
      "worked out: carcase herd",
      "own",
      [...indicators.keys(), ...scaleIds, ...resultIds],
      ({ row }) => wordOf(row.id),
    ),
    text("title", "The same in words", "worked out: carcase herd", ({ row }) => wordOf(row.title)),
    count("examined", "Pigs that answered: the denominator"),
    count("not_examined", "Pigs in which nobody looked"),
    count("not_graded", "Pigs that were looked at, but not as the question needs"),
    count("affected", "Pigs that answered yes"),
    code(
      "of",
      "Whom the number is of: of the group, or of these pigs and no others",
      "worked out: carcase herd",
      ({ row }) => wordOf(row.of),
      ["prevalence", "these-pigs"],
    ),
    figure("value", "The number; a share is 0 to 1"),
    figure("lower", "Lower limit"),
    figure("upper", "Upper limit"),
    named("unit", "Unit", "worked out: carcase herd", "unit", units, ({ row }) => wordOf(row.unit)),
    figure("level", "Confidence level of the limits"),
    code("method", "How the limits were made", "worked out: carcase herd", ({ row }) => wordOf(row.method)),
    code(
      "one_sided",
      "Which limit the one-sided one is, where none or all are affected",
      "worked out: carcase herd",
      ({ row }) => wordOf(row.one_sided),
      ["lower", "upper"],
    ),
    figure("one_sided_limit", "That limit"),
    count("head", "Pigs of the group, where it is known"),
    figure("effective_size", "Pigs drawn singly that groups taken together count as"),
    code(
      "confidence",
      "How sure the limit or scale is",
      "its source",
      ({ row }) => wordOf(row.confidence),
      confidences,
    ),
    text("source", "Who says that it means something", "its source", ({ row }) => wordOf(row.source)),
    text("note", "What must be known to read it", "worked out: carcase herd", ({ row }) => wordOf(row.note)),
  ],
  rows: ({ cases, visit }) => {
    const [first] = cases;
    if (first === undefined) return [];
    const place = visit === undefined ? ofCase(first) : ofVisit(visit);
    const folder = visit === undefined ? portablePath(dirname(first.file)) : undefined;
    const report = herdEstimates(cases);
    return herdRows({ ...report, estimates: [...report.estimates, ...(report.results ?? [])] }).map(
      (row) => ({
        ...place,
        folder,
        row,
      }),
    );
  },
});
