/** Agreement of readers for people: who is higher, then how well they agree, then where they differ. */
import type { AgreeReport, Difference, PairAgreement, ScaleAgreement } from "../../agree/index.ts";
import type { IntraclassCorrelations, Kappa } from "../../statistics/index.ts";
import { count } from "../../words/listing.ts";
import { levelPercent, percent, percentRange } from "../../words/percent.ts";
import { type Block, gap, heading, list, remarks, right, table, text } from "../page/blocks.ts";
import { marked, memoryLegend } from "../page/memory-mark.ts";
import { number } from "../page/numbers.ts";
import type { Style } from "../page/style.ts";
import { textOf } from "../page/text.ts";

export const agreeText = ({ level, scales }: AgreeReport, style: Style): string =>
  textOf(
    [
      ...scales.flatMap((scale) => [
        heading(`${marked(scale.title, scale.confidence)} (${scale.scale})`),
        ...scale.pairs.flatMap((pair) => pairBlocks(pair, scale, level)),
        ...togetherBlocks(scale, level),
        ...publishedBlocks(scale),
      ]),
      ...list("Sources", sourceLines(scales)),
    ],
    style,
  );

function pairBlocks(pair: PairAgreement, scale: ScaleAgreement, level: number): Block[] {
  const { same, caution } = pair;
  const alike = `The same in ${same.proportion === 1 ? "all" : Math.round(same.proportion * pair.pigs)} of them: ${percent(same.proportion)} (${levelPercent(level)} interval ${percentRange(same.lower, same.upper)}).`;
  return [
    heading(`${pair.first} and ${pair.second}, ${count(pair.pigs, "pig")}`, { indent: 2 }),
    text(alike),
    text(pair.difference === null ? noOrder : higher(pair, pair.difference, level)),
    ...valueTable(valueRows(pair), level),
    ...cautionBlocks(caution),
    ...(pair.grades === null
      ? [text("Kappa is not given: the scale has too many values to be grades. The ICC is for such.")]
      : gradeTable(pair, pair.grades.table, scale.grades ?? [])),
  ];
}

/** Who is higher, in a sentence: named only when the exact sign test says so. */
function higher({ first, second, pigs }: PairAgreement, difference: Difference, level: number): string {
  const { mean, second_higher: up, first_higher: down, equal, p, note } = difference;
  const who = p < 1 - level ? `${up > down ? second : first} is higher` : "Neither is shown to be higher";
  const counts = `${second} gives more in ${up}, less in ${down}, the same in ${equal} of ${count(pigs, "pig")}`;
  const sign = `sign test, p ${p < 0.001 ? "< 0.001" : `= ${p.toFixed(3)}`}`;
  const range =
    mean.lower === null
      ? ""
      : ` (${levelPercent(level)} interval ${number(mean.lower)} to ${number(mean.upper)})`;
  return `${who}: ${counts} (${sign}). Mean difference, ${second} less ${first}: ${pointsOf(mean.mean)}${range}.${note === null ? "" : ` ${note}`}`;
}

const noOrder =
  "The grades of this scale are names without an order: nobody is higher, and weights and means say nothing.";

/** `1 point`, `-1 point`, `0.5 points`. */
function pointsOf(mean: number | null): string {
  const shown = number(mean);
  return `${shown} ${/^-?1$/.test(shown) ? "point" : "points"}`;
}

const cautionBlocks = (caution: string | null): Block[] =>
  remarks(caution === null ? [] : [`Few pigs: ${caution}.`], 4);

function valueRows({ grades, icc }: PairAgreement): string[][] {
  const kappa = (name: string, found: Kappa | null): string[][] =>
    found === null ? [] : [valueRow(name, found.kappa, found)];
  return [
    ...(grades === null
      ? []
      : [
          ...kappa("kappa", grades.unweighted),
          ...kappa("kappa, linear weights", grades.linear),
          ...kappa("kappa, quadratic weights", grades.quadratic),
          valueRow("PABAK", grades.pabak.value, { ...grades.pabak, reason: null }),
        ]),
    ...(icc === null ? [] : iccRows(icc)),
  ];
}

const iccRows = ({
  agreement,
  consistency,
}: Pick<IntraclassCorrelations, "agreement" | "consistency">): string[][] => [
  valueRow("ICC(2,1), agreement", agreement.icc, agreement),
  valueRow("ICC(3,1), consistency", consistency.icc, consistency),
];

/** A value with its interval, or why it has none. */
const valueRow = (
  name: string,
  value: number | null,
  { lower, upper, reason }: Pick<Kappa, "lower" | "upper" | "reason">,
): string[] => [
  name,
  value === null ? "–" : value.toFixed(2),
  lower === null || upper === null ? (reason ?? "–") : `${lower.toFixed(2)} to ${upper.toFixed(2)}`,
];

const valueTable = (rows: readonly string[][], level: number): Block[] =>
  table([{ head: "" }, right("value"), { head: `${levelPercent(level)} interval` }], rows, { indent: 4 });

/** Rows are grades of the first reader, columns of the second; a point where there is no pig. */
const gradeTable = (
  { first, second }: PairAgreement,
  counts: readonly (readonly number[])[],
  grades: readonly number[],
): Block[] => [
  text(`Pigs by grade: rows ${first}, columns ${second}.`),
  ...table(
    ["", ...grades.map(String)].map(right),
    counts.map((row, index) => [
      String(grades[index] ?? ""),
      ...row.map((pigs) => (pigs === 0 ? "·" : String(pigs))),
    ]),
    { indent: 4, parts: true },
  ),
];

function togetherBlocks({ together, together_caution: caution }: ScaleAgreement, level: number): Block[] {
  if (together === null) return [];
  const { readers, subjects } = together;
  return [
    heading(`All ${readers} readers, ${count(subjects, "pig")} that each of them read`, { indent: 2 }),
    ...valueTable(iccRows(together), level),
    ...cautionBlocks(caution),
  ];
}

function publishedBlocks({ published }: ScaleAgreement): Block[] {
  const lines = published.map(
    ({ of, statistic, lowest, highest, readers, source }) =>
      `${of}: ${statistic} ${lowest.toFixed(2)} to ${highest.toFixed(2)}; ${readers}. ${marked(source.cite, source.confidence)}`,
  );
  return lines.length === 0 ? [] : [gap, ...list("Published, for comparison:", lines, { indent: 2 })];
}

const sourceLines = (scales: readonly ScaleAgreement[]): string[] => [
  ...scales.map(({ title, confidence, source }) => `${marked(title, confidence)}: ${source}`),
  ...methods,
  memoryLegend,
];

const methods = [
  "Kappa: Cohen 1960 and 1968.",
  "PABAK: Byrt, Bishop & Carlin 1993, J Clin Epidemiol 46:423-429 (citation from memory); interval carried over from the exact one of the agreement.",
  "ICC: Shrout & Fleiss 1979, Psychol Bull 86:420-428.",
  "Intervals of kappa and ICC: of these readers, with other pigs; by leaving out one pig at a time (jackknife, on Fisher's z), Arvesen & Schmitz 1970, Biometrics 26:677-686, and Fleiss & Davies 1982, Am J Epidemiol 115:841-845 (both from memory).",
];
