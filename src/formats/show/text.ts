/** A pig on one screen: who it was, what was found, its scores, what is left open. */
import type { Case } from "../../cases/index.ts";
import { reachOf } from "../../herd/index.ts";
import { organById, systemTitle } from "../../knowledge/index.ts";
import { blankSystems } from "../../record/index.ts";
import type { ReportPig, ReportResult } from "../../report/index.ts";
import { grouped } from "../../words/grouped.ts";
import { count, listing } from "../../words/listing.ts";
import { type Block, heading, list, text } from "../page/blocks.ts";
import { memoryLegend } from "../page/memory-mark.ts";
import type { Style } from "../page/style.ts";
import { textOf } from "../page/text.ts";

export function showText(one: Case, { pigs, scales }: ReportResult, style: Style, width = 80): string {
  const [pig] = pigs;
  if (pig === undefined) return "";
  const marked = pig.scores.some(({ from_memory }) => from_memory);
  return textOf(
    [
      heading([pig.id, whoOf(one)].filter(Boolean).join(" · ")),
      text(howOf(one), { hang: 2 }),
      ...found(pig),
      ...list("Scores", scoreLines(pig, scales), { bullet: "" }),
      ...list("Looked at and normal", oneLine(systemsAt(pig, "normal"))),
      ...list("Not examined", leftLines(pig)),
      ...list("Diagnosis", diagnosisLines(pig)),
      ...list("Open", openLines(one, pig)),
      ...(marked ? [text(memoryLegend, { quiet: true })] : []),
    ],
    style,
    width,
  );
}

function whoOf({ record: { pig }, ageClass }: Case): string {
  if (pig === undefined) return "";
  const { tag, group, age, sex, weight, temperature } = pig;
  return [tag === undefined ? undefined : `tag ${tag}`, group, age ?? ageClass, sex, weight, temperature]
    .filter((part) => part !== undefined)
    .join(", ");
}

function howOf({ record: { selection, death, opened } }: Case): string {
  const signs = selection?.signs ?? [];
  const chosen = reachOf(selection?.basis ?? null).title;
  return [
    signs.length === 0 ? chosen : `${chosen} (${signs.join(", ").replaceAll("-", " ")})`,
    death?.manner?.replaceAll("-", " "),
    opened?.at === undefined ? undefined : `opened ${opened.at}`,
  ]
    .filter((part) => part !== undefined)
    .join("; ");
}

const titleOf = (organ: string): string => organById(organ)?.definition.title ?? organ;

/** An organ a line. */
function found({ findings }: ReportPig): Block[] {
  const byOrgan = grouped(findings, ({ organ }) => organ);
  const lines = [...byOrgan].map(
    ([organ, some]) => `${titleOf(organ)}: ${some.map(({ words }) => words).join("; ")}`,
  );
  return list("Found", lines.length === 0 ? ["nothing is described"] : lines);
}

const scoreLines = ({ scores }: ReportPig, scales: ReportResult["scales"]): string[] =>
  oneLine(
    scores.map(({ scale, value, from_memory }) => {
      const of = scales.find((one) => one.scale === scale);
      return `${of?.title ?? scale}${from_memory ? "*" : ""} ${value}`;
    }),
  );

const oneLine = (parts: readonly string[]): string[] => (parts.length === 0 ? [] : [parts.join(", ")]);

const systemsAt = ({ systems }: ReportPig, looked: string): string[] =>
  Object.entries(systems).flatMap(([id, state]) =>
    state.looked === looked ? [systemTitle(id).toLowerCase()] : [],
  );

const leftLines = ({ systems }: ReportPig): string[] =>
  Object.entries(systems).flatMap(([id, { looked, reason }]) =>
    looked === "left" ? [`${systemTitle(id)}: ${reason ?? "no reason given"}`] : [],
  );

function diagnosisLines({ diagnosis: { morphologic, aetiologic, differentials } }: ReportPig): string[] {
  return [
    ...morphologic,
    ...(aetiologic.length === 0 ? [] : [`Cause: ${aetiologic.join("; ")}`]),
    ...(differentials.length === 0 ? [] : [`Could also be: ${listing(differentials, "or")}`]),
  ];
}

function openLines(one: Case, { samples }: ReportPig): string[] {
  const blank = blankSystems(one);
  const waiting = samples.filter(({ open }) => open.length > 0);
  return [
    ...(blank.length === 0
      ? []
      : [
          `${count(blank.flatMap(({ must }) => must).length, "organ")} still blank: ${listing(blank.map(({ title }) => title.toLowerCase()))}`,
        ]),
    ...(waiting.length === 0
      ? []
      : [`${count(waiting.length, "sample")} without a result: ${waiting.map(({ id }) => id).join(", ")}`]),
  ];
}
