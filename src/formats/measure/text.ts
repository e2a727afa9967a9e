/** Measurements for people: the outlines, what follows from them, and what was published, a block a tracing. */
import { type Measure, measures, sourceLine } from "../../knowledge/index.ts";
import type { Measurements, Sided, Value } from "../../measure/index.ts";
import { listing } from "../../words/listing.ts";
import { type Block, heading, right, table, text, verbatim } from "../page/blocks.ts";
import { memoryLegend, memoryMark } from "../page/memory-mark.ts";
import type { Style } from "../page/style.ts";
import { textOf } from "../page/text.ts";

type One = Measurements["measurements"][number];

/** @param explained with what the values are and what was published */
export const measureText = ({ measurements }: Measurements, style: Style, explained: boolean): string =>
  textOf([...measurements.flatMap(blocksOf), ...(explained ? published(measurements) : [])], style);

function blocksOf(one: One): Block[] {
  const { owner, tracing, outlines, snout, lungs, passed_over: passed } = one;
  const missing = [
    ...(snout === null
      ? []
      : [...sided(snout.perimeter_ratio), snout.septum_deviation].flatMap((value) => value.missing)),
    ...Object.values(lungs?.affected_percent ?? {}).flatMap((value) => value.missing),
  ];
  return [
    heading(owner === null ? tracing : `${owner.case}  ${owner.organ}  ${tracing}`),
    ...table(
      [{ head: "outline" }, right("area, mm²"), right("perimeter, mm")],
      outlines.map(({ part, area_mm2: area, perimeter_mm: perimeter }) => [
        part,
        area === null ? "–" : area.toFixed(1),
        perimeter.toFixed(1),
      ]),
    ),
    ...(snout === null ? [] : snoutTable(snout)),
    ...(lungs === null ? [] : lungBlocks(lungs.affected_percent)),
    ...(missing.length === 0 ? [] : [text(`–: no value without ${listing([...new Set(missing)])}`)]),
    ...(passed.length === 0 ? [] : [text(`not measured, no agreed id: ${passed.join(", ")}`)]),
  ];
}

const sided = ({ left, right, total }: Sided): Value[] => [left, right, total];

function snoutTable(snout: NonNullable<One["snout"]>): Block[] {
  const { asymmetry, septum_deviation: septum } = snout;
  return table(
    [{ head: "snout" }, right("left"), right("right"), right("both"), { head: "" }],
    [
      ...(["perimeter_ratio", "concha_area_fraction", "free_area_percent"] as const).map((key) => [
        nameOf(measures[key]),
        ...sided(snout[key]).map((value) => shown(value, measures[key])),
        direction(measures[key]),
      ]),
      [nameOf(measures.asymmetry), "", "", shown(asymmetry, measures.asymmetry), lean(asymmetry)],
      [nameOf(measures.septum_deviation), "", "", shown(septum, measures.septum_deviation), ""],
    ],
  );
}

function lungBlocks(shares: Readonly<Record<string, Value>>): Block[] {
  const rows = Object.entries(shares).map(([lobe, value]) => [lobe, shown(value, measures.affected_percent)]);
  const known = rows.filter(([, share]) => share !== "–").map(([lobe, share]) => `${lobe}: ${share}`);
  return [
    ...table([{ head: "lobe" }, right("affected, %")], rows),
    ...(known.length === 0 ? [] : [verbatim(`  as an observation: consolidation: {${known.join(", ")}}`)]),
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

/** What was published for the values that were measured: for comparison, no limits. */
function published(measurements: Measurements["measurements"]): Block[] {
  const all: Measure[] = Object.values(measures);
  const asked = all.filter(({ organ }) =>
    measurements.some(({ snout, lungs }) => (organ === "respiratory.lungs" ? lungs : snout) !== null),
  );
  if (asked.length === 0) return [];
  return [
    heading("What the values are; published ones are for comparison, no limits"),
    ...asked.flatMap((measure) => [
      text(`${nameOf(measure)}: ${measure.formula}. ${sourceLine(measure.source)}`),
      ...(measure.never_with === undefined ? [] : [text(`${measure.never_with}.`, { indent: 4 })]),
      ...measure.references.flatMap(({ of, unit, values, source }) => [
        text(`Published, ${of} (${unit}): ${sourceLine(source)}`, { indent: 4 }),
        ...table([right(""), { head: "" }], values.map(referenceRow), { indent: 6 }),
      ]),
    ]),
    ...(asked.some(({ source }) => source.confidence === "from-memory") ? [text(memoryLegend)] : []),
  ];
}

function referenceRow({ of, mean, sd, n }: Measure["references"][number]["values"][number]): string[] {
  const more = [...(sd === undefined ? [] : [`SD ${sd}`]), ...(n === undefined ? [] : [`n ${n}`])];
  return [String(mean), `${of}${more.length === 0 ? "" : ` (${more.join(", ")})`}`];
}
