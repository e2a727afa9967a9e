/** Measurements for people: the outlines, what follows from them, and what was published, a block a tracing. */
import { type Measure, measures, sourceLine } from "../../knowledge/index.ts";
import type { Measurements, Sided, Value } from "../../measure/index.ts";
import { listing } from "../../words/listing.ts";
import { visible } from "../../words/visible.ts";
import { memoryLegend, memoryMark } from "../page/memory-mark.ts";
import type { Style } from "../page/style.ts";
import { table } from "../page/table.ts";
import { wrapped } from "../page/wrap.ts";

type One = Measurements["measurements"][number];

/** @param explained with what the values are and what was published */
export function measureText({ measurements }: Measurements, style: Style, explained: boolean): string {
  const blocks = measurements.flatMap((one) => [style.heading(titleOf(one)), ...body(one, style), ""]);
  const more = explained ? published(measurements, style) : [];
  return [...blocks, ...more].map((line) => `${line}\n`).join("");
}

function titleOf({ owner, tracing }: One): string {
  const name = visible(tracing);
  return owner === null ? name : `${visible(owner.case)}  ${owner.organ}  ${name}`;
}

function body(one: One, style: Style): string[] {
  const { snout, lungs, passed_over: passed } = one;
  const missing = [
    ...(snout === null
      ? []
      : [...sided(snout.perimeter_ratio), snout.septum_deviation].flatMap((value) => value.missing)),
    ...Object.values(lungs?.affected_percent ?? {}).flatMap((value) => value.missing),
  ];
  const wanting = [...new Set(missing)];
  const rest = [
    ...(wanting.length === 0 ? [] : [`–: no value without ${listing(wanting)}`]),
    ...(passed.length === 0 ? [] : [`not measured, no agreed id: ${passed.map(visible).join(", ")}`]),
  ];
  return [
    ...outlineLines(one, style),
    ...(snout === null ? [] : snoutLines(snout, style)),
    ...(lungs === null ? [] : lungLines(lungs.affected_percent, style)),
    ...rest.flatMap((line) => wrapped(line, "  ")),
  ];
}

const sided = ({ left, right, total }: Sided): Value[] => [left, right, total];

function outlineLines({ outlines }: One, style: Style): string[] {
  const columns = [
    { head: "outline" },
    { head: "area, mm²", right: true },
    { head: "perimeter, mm", right: true },
  ];
  const rows = outlines.map(({ part, area_mm2: area, perimeter_mm: perimeter }) => [
    visible(part),
    area === null ? "–" : area.toFixed(1),
    perimeter.toFixed(1),
  ]);
  return indented(table(columns, rows), style);
}

function snoutLines(snout: NonNullable<One["snout"]>, style: Style): string[] {
  const columns = ["left", "right", "both"].map((head) => ({ head, right: true }));
  const rows = (["perimeter_ratio", "concha_area_fraction", "free_area_percent"] as const).map((key) => [
    nameOf(measures[key]),
    ...sided(snout[key]).map((value) => shown(value, measures[key])),
    direction(measures[key]),
  ]);
  rows.push(
    [nameOf(measures.asymmetry), "", "", shown(snout.asymmetry, measures.asymmetry), lean(snout.asymmetry)],
    [nameOf(measures.septum_deviation), "", "", shown(snout.septum_deviation, measures.septum_deviation), ""],
  );
  return indented(table([{ head: "snout" }, ...columns, { head: "" }], rows), style);
}

function lungLines(shares: Readonly<Record<string, Value>>, style: Style): string[] {
  const rows = Object.entries(shares).map(([lobe, value]) => [lobe, shown(value, measures.affected_percent)]);
  const known = rows.filter(([, share]) => share !== "–").map(([lobe, share]) => `${lobe}: ${share}`);
  return [
    ...indented(table([{ head: "lobe" }, { head: "affected, %", right: true }], rows), style),
    ...(known.length === 0 ? [] : [`  as an observation: consolidation: {${known.join(", ")}}`]),
  ];
}

const nameOf = ({ short, source }: Measure): string =>
  source.confidence === "from-memory" ? `${short}${memoryMark}` : short;

const direction = ({ falls_with: falls, rises_with: rises }: Measure): string =>
  falls === undefined ? `rises with ${rises}` : `falls with ${falls}`;

const lean = ({ value }: Value): string =>
  // Not what is shown as 0.000.
  value === null || Math.abs(value) < 0.0005 ? "" : `the ${value < 0 ? "left" : "right"} side has less`;

const shown = ({ value }: Value, { decimals }: Measure): string =>
  value === null ? "–" : (Number(value.toFixed(decimals)) + 0).toFixed(decimals);

const indented = (lines: readonly string[], style: Style): string[] =>
  lines.map((line, index) => `  ${index === 0 ? style.quiet(line) : line}`);

/** What was published for the values that were measured: for comparison, no limits. */
function published(measurements: Measurements["measurements"], style: Style): string[] {
  const all: Measure[] = Object.values(measures);
  const asked = all.filter(({ organ }) =>
    measurements.some(({ snout, lungs }) => (organ === "respiratory.lungs" ? lungs : snout) !== null),
  );
  if (asked.length === 0) return [];
  const lines = asked.flatMap((measure) => [
    ...wrapped(`${nameOf(measure)}: ${measure.formula}. ${sourceLine(measure.source)}`, "  "),
    ...(measure.never_with === undefined ? [] : wrapped(`${measure.never_with}.`, "    ")),
    ...measure.references.flatMap(({ of, unit, values, source }) => [
      ...wrapped(`Published, ${of} (${unit}): ${sourceLine(source)}`, "    "),
      ...values.map((value) => `      ${referenceText(value)}`),
    ]),
  ]);
  const memory = asked.some(({ source }) => source.confidence === "from-memory") ? [`  ${memoryLegend}`] : [];
  return [
    style.heading("What the values are; published ones are for comparison, no limits"),
    ...lines,
    ...memory,
  ];
}

function referenceText({ of, mean, sd, n }: Measure["references"][number]["values"][number]): string {
  const more = [...(sd === undefined ? [] : [`SD ${sd}`]), ...(n === undefined ? [] : [`n ${n}`])];
  return `${mean}  ${of}${more.length === 0 ? "" : ` (${more.join(", ")})`}`;
}
