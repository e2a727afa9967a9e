/** Herd numbers for people: a block a stratum, how common first, then how bad. */
import type { Estimate, HerdReport, HerdScores, IndexResult, Stratum } from "../herd/index.ts";
import { levelPercent, percent, percentRange, reachOf } from "../herd/index.ts";
import { count } from "../words/listing.ts";
import { visible } from "../words/visible.ts";
import { marked, memoryLegend } from "./memory-mark.ts";
import { number } from "./numbers.ts";
import type { Style } from "./style.ts";
import { table } from "./table.ts";

export function herdText(report: HerdReport, style: Style): string {
  const blocks = blocksOf(report);
  const lines = blocks.flatMap((block) => [
    style.heading(visible(titleOf(block))),
    ...estimateLines(block.estimates, style),
    ...(block.estimates.length === 0 ? [] : [""]),
    ...scoreLines(block.scores, style),
    "",
  ]);
  return [...lines, ...noteLines(report, style), ...sourceLines(report, style)]
    .map((line) => `${line}\n`)
    .join("");
}

interface Block {
  readonly stratum: Stratum;
  readonly basis: string | null;
  readonly estimates: Estimate[];
  readonly scores: HerdScores[];
}

/** Estimates and scores of the same stratum and basis, in the order of the report. */
function blocksOf({ estimates, scores }: HerdReport): Block[] {
  const blocks = new Map<string, Block>();
  const block = ({ stratum, basis }: Estimate | HerdScores): Block => {
    const key = JSON.stringify([stratum, basis]);
    const known = blocks.get(key) ?? { stratum, basis, estimates: [], scores: [] };
    blocks.set(key, known);
    return known;
  };
  for (const one of estimates) block(one).estimates.push(one);
  for (const one of scores) block(one).scores.push(one);
  return [...blocks.values()];
}

function titleOf({ stratum, basis, estimates, scores }: Block): string {
  const { farm, visit, folder, group, age_class } = stratum;
  const parts = [
    farm === undefined ? "" : (farm ?? "no farm"),
    visit === undefined ? "" : (visit ?? `no visit (${folder ?? ""})`),
    group === undefined ? "" : (group ?? "no group"),
    age_class === undefined ? "" : (age_class ?? "age unknown"),
    reachOf(basis).title,
  ];
  const pigs = Math.max(
    0,
    ...[...estimates.map((e) => e.examined + e.not_examined), ...scores.map((s) => s.n + s.not_examined)],
  );
  return `${parts.filter((part) => part !== "").join(" · ")} (${count(pigs, "pig")})`;
}

function estimateLines(estimates: readonly Estimate[], style: Style): string[] {
  const [first] = estimates;
  if (first === undefined) return [];
  const prevalence = reachOf(first.basis).prevalence;
  const head = prevalence ? "prevalence" : "of these pigs";
  const rows = estimates.map((one) => [
    marked(one.title, markOf(one)),
    `${one.affected} of ${one.examined}`,
    one.proportion === null ? "–" : percent(one.proportion),
    one.lower === null || one.upper === null ? "–" : percentRange(one.lower, one.upper),
    oneSidedCell(one),
    one.not_examined === 0 ? "" : String(one.not_examined),
  ]);
  const columns = [
    { head: "" },
    { head: "affected", right: true },
    { head, right: true },
    { head: `${levelPercent(first.level)} interval`, right: true },
    ...(rows.some((row) => row[4] !== "") ? [{ head: "one-sided", right: true }] : [noColumn]),
    ...(rows.some((row) => row[5] !== "") ? [{ head: "not examined", right: true }] : [noColumn]),
  ];
  const shown = columns.map((column) => column !== noColumn);
  const [header, ...body] = table(
    columns.filter((_, index) => shown[index]),
    rows.map((row) => row.filter((_, index) => shown[index])),
  );
  const why = prevalence ? [] : [`  These numbers are ${reachOf(first.basis).wording}.`];
  return [
    `  ${style.quiet(header ?? "")}`,
    ...body.map((line) => `  ${line}`),
    ...why.map((line) => style.quiet(line)),
  ];
}

const noColumn = { head: "" };

/** At 0 of n and n of n: what can be said with the whole confidence on one side. */
function oneSidedCell({ one_sided: found, examined }: Estimate): string {
  if (found === null || examined < 2) return "";
  return `${found.limit === "upper" ? "at most" : "at least"} ${percent(found.value)}`;
}

/** An estimate rests on memory when its limit or its scale does. */
const markOf = (one: Estimate): string | null =>
  [one.confidence, one.scale?.confidence].includes("from-memory") ? "from-memory" : one.confidence;

function scoreLines(scores: readonly HerdScores[], style: Style): string[] {
  const rows = scores.map((one) => [
    marked(one.title, one.confidence),
    String(one.n),
    number(one.mean),
    number(one.median, 1),
    `${number(one.q1, 1)} to ${number(one.q3, 1)}`,
    one.distribution.map(({ value, count: pigs }) => `${number(value, 1)}:${pigs}`).join(" "),
  ]);
  const columns = [
    { head: "" },
    { head: "n", right: true },
    { head: "mean", right: true },
    { head: "median", right: true },
    { head: "quartiles", right: true },
    { head: "score:pigs" },
  ];
  const [header, ...body] = table(columns, rows);
  const indices = scores.flatMap((one) =>
    one.n === 0 ? [] : one.indices.map((index) => indexCell(one, index)),
  );
  return [
    `  ${style.quiet(header ?? "")}`,
    ...body.map((line) => `  ${line}`),
    ...(indices.length === 0
      ? []
      : [`  ${style.quiet("herd indices")}`, ...indices.map((cell) => `    ${cell}`)]),
  ];
}

/** An index rests on memory when it or its scale does. */
function indexCell({ confidence: scale }: HerdScores, index: IndexResult): string {
  const { title, value, unit, class: named, no_class: withheld, confidence } = index;
  const shown = value === null ? "–" : unit === "share" ? percent(value) : number(value);
  const mark = [scale, confidence].includes("from-memory") ? "from-memory" : confidence;
  const note = named ?? (withheld === undefined ? "" : "no class");
  return `${marked(title, mark)}: ${shown}${note === "" ? "" : ` (${note})`}`;
}

/** What must be known to read the indices, each said once. */
function noteLines({ scores }: HerdReport, style: Style): string[] {
  const indices = scores.flatMap((one) => (one.n === 0 ? [] : one.indices));
  const notes = new Set(
    indices.flatMap(({ title, class: named, population, note }) => [
      ...(note === undefined ? [] : [`${title}: ${note}`]),
      ...(named === null || population === undefined
        ? []
        : [`${title}: classes were made from ${population}.`]),
    ]),
  );
  if (indices.some((index) => index.no_class !== undefined))
    notes.add(
      "no class: classes of herd indices are given only for pigs drawn at random or whole groups and, where they were made from slaughter batches, only for slaughtered pigs.",
    );
  return notes.size === 0 ? [] : [style.heading("Notes"), ...[...notes].map((note) => `  ${note}`), ""];
}

function sourceLines({ estimates, scores }: HerdReport, style: Style): string[] {
  const cited = new Map<string, string>();
  for (const one of estimates)
    if (one.source !== null) cited.set(one.indicator, `${marked(one.title, markOf(one))}: ${one.source}`);
  for (const one of scores) cited.set(one.scale, `${marked(one.title, one.confidence)}: ${one.source}`);
  return [
    style.heading("Sources"),
    ...[...cited.values()].map((line) => `  ${line}`),
    ...(estimates.length === 0
      ? []
      : ["  Intervals: Clopper & Pearson 1934, Biometrika 26:404-413, exact and two-sided."]),
    `  ${memoryLegend}`,
  ];
}
