/** What there is beyond the answer, and what the marks of the answer mean. */
import type { SnoutReading } from "../../reading/index.ts";
import { count, listing } from "../../words/listing.ts";
import { type Block, text } from "../page/blocks.ts";
import { memoryLegend } from "../page/memory-mark.ts";
import { markOf } from "./prevalence.ts";
import type { HerdNumbers } from "./strata.ts";

/** The sentence that the others qualify, and what the laboratory did not find, so that nobody asks for it again. */
export const toldFirst = ({ statements }: SnoutReading): SnoutReading["statements"] =>
  statements.filter(({ id }, index) => index === 0 || id === "toxin-not-found");

export function moreWithAll(
  { answers = [], estimates, scores, told_first: first }: HerdNumbers,
  snouts: readonly SnoutReading[],
): Block[] {
  const shown = scores.filter(({ scale, n }) => n > 0 && (first?.scales.includes(scale) ?? true));
  const indicators = idsOf(
    estimates.filter(({ examined }) => examined > 0).map(({ indicator }) => indicator),
  );
  const scales = idsOf(scores.filter(({ n }) => n > 0).map(({ scale }) => scale));
  const blank = idsOf(scores.map(({ scale }) => scale)).filter((id) => !scales.includes(id));
  const told = idsOf(answers.map(({ indicator }) => indicator));
  const statements = snouts.reduce(
    (sum, reading) => sum + reading.statements.length - toldFirst(reading).length,
    0,
  );
  const more = [
    ...counted(indicators.filter((id) => !told.includes(id)).length, "indicator"),
    ...counted(scales.filter((id) => first !== undefined && !first.scales.includes(id)).length, "scale"),
    ...counted(statements, "statement of the snouts", "statements of the snouts"),
  ];
  const memory =
    answers.some((one) => markOf(one) === "from-memory") ||
    shown.some(({ confidence }) => confidence === "from-memory");
  const named = [
    ...new Map(shown.map(({ scale, short }) => [scale, `${short.join(" ")} ${scale}`])).values(),
  ];
  return [
    ...(answers.length === 0 && shown.length === 0
      ? [text("Nothing that is counted here was recorded in these pigs.", { indent: 0 })]
      : []),
    ...(named.length === 0 ? [] : [text(`Scales: ${listing(named)}.`, { indent: 0 })]),
    ...(blank.length === 0
      ? []
      : [text(`No pig has a score on ${count(blank.length, "scale")} more.`, { indent: 0 })]),
    text(
      `More with --all: ${[...more, "each group for itself", "means with their intervals", "sources"].join(", ")}.`,
      { indent: 0 },
    ),
    ...(memory ? [text(memoryLegend, { indent: 0 })] : []),
  ];
}

const idsOf = (ids: readonly string[]): string[] => [...new Set(ids)];
const counted = (number: number, one: string, many?: string): string[] =>
  number === 0 ? [] : [count(number, `more ${one}`, many === undefined ? undefined : `more ${many}`)];
