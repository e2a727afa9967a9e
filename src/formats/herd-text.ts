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
    "",
    ...scoreLines(block.scores, style),
    "",
  ]);
  return [...lines, ...sourceLines(report, style)].map((line) => `${line}\n`).join("");
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
    one.not_examined === 0 ? "" : String(one.not_examined),
  ]);
  const columns = [
    { head: "" },
    { head: "affected", right: true },
    { head, right: true },
    { head: `${levelPercent(first.level)} interval`, right: true },
    { head: "not examined", right: true },
  ];
  const [header, ...body] = table(columns, rows);
  const why = prevalence ? [] : [`  These numbers are ${reachOf(first.basis).wording}.`];
  const edges = estimates.filter(
    (one) => one.examined > 0 && (one.affected === 0 || one.affected === one.examined),
  );
  return [
    `  ${style.quiet(header ?? "")}`,
    ...body.map((line) => `  ${line}`),
    ...why.map((line) => style.quiet(line)),
    ...edges.map((one) => style.quiet(`  ${one.wording}`)),
  ];
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
  const indices = scores.flatMap((one) => (one.n === 0 ? [] : one.indices.map((index) => indexLine(index))));
  return [
    `  ${style.quiet(header ?? "")}`,
    ...body.map((line) => `  ${line}`),
    ...indices.map((line) => style.quiet(`  ${line}`)),
  ];
}

function indexLine({ id, title, value, class: named, population, confidence, note }: IndexResult): string {
  const shown = value === null ? "–" : /share/i.test(title) ? percent(value) : number(value);
  const classed =
    named === null ? "" : `, ${named}${population === undefined ? "" : ` (compared with ${population})`}`;
  return `${marked(title, confidence)} ${shown}${classed} [${id}]${note === undefined ? "" : ` ${note}`}`;
}

function sourceLines({ estimates, scores }: HerdReport, style: Style): string[] {
  const cited = new Map<string, string>();
  for (const one of estimates)
    if (one.source !== null) cited.set(one.indicator, `${marked(one.title, markOf(one))}: ${one.source}`);
  for (const one of scores) cited.set(one.scale, `${marked(one.title, one.confidence)}: ${one.source}`);
  return [
    style.heading("Sources"),
    ...[...cited.values()].map((line) => `  ${line}`),
    "  Intervals: Clopper & Pearson 1934, Biometrika 26:404-413, exact and two-sided.",
    `  ${memoryLegend}`,
  ];
}
