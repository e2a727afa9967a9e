/** `carcase compare`: did it change between visits, or does it differ between groups? */
import { unknownName } from "../cases/index.ts";
import {
  type Between,
  type Cluster,
  type CompareReport,
  clusterNames,
  compareCases,
  type Factor,
  facetNames,
  type Where,
} from "../compare/index.ts";
import { compareCsv } from "../formats/compare/csv.ts";
import { compareMarkdown, compareText } from "../formats/compare/document.ts";
import { compareJson } from "../formats/compare/json.ts";
import { comparability } from "../knowledge/index.ts";
import { asUsage, choices, idList } from "./lists.ts";
import { openShare } from "./numbers.ts";
import { chosenFormat, openArchive } from "./open-archive.ts";
import type { CommonOptions } from "./options.ts";
import { countable } from "./sound-cases.ts";
import { resultStyle, writeResult } from "./terminal.ts";
import { UsageError } from "./usage-error.ts";

export interface CompareCommandOptions extends CommonOptions {
  readonly between?: string;
  readonly where?: readonly string[];
  readonly indicator?: string;
  readonly scale?: string;
  readonly level?: string;
  readonly evenIf?: string;
  readonly cluster?: string;
}

/** Exit code 0 also when a comparison was refused: that is an answer. */
export async function runCompare(paths: readonly string[], options: CompareCommandOptions): Promise<number> {
  const format = chosenFormat(options, ["text", "json", "csv", "markdown"]);
  const asked = {
    ...(options.between !== undefined && { between: betweenOf(options.between) }),
    where: whereOf(options.where ?? []),
    ...(options.level !== undefined && { level: openShare("--level", options.level) }),
    ...(options.evenIf !== undefined && { evenIf: choices("--even-if", options.evenIf, factors) }),
    ...(options.cluster !== undefined && { cluster: clusterOf(options.cluster) }),
    ...idList("indicators", options.indicator),
    ...idList("scales", options.scale),
  };
  const { archive, failed } = await countable(openArchive(paths, options), options);
  if (archive.cases.length === 0 && failed) return 2;
  const report = asUsage("compare", () => compareCases(archive, asked));
  writeResult(written(format, report, options), options);
  return failed ? 2 : 0;
}

const factors = Object.keys(comparability.factors) as Factor[];

function betweenOf(text: string): Between {
  const known: readonly Between[] = ["visits", "groups"];
  const between = known.find((one) => one === text || one === `${text}s`);
  if (between === undefined) throw new UsageError(`--between: ${unknownName(text, known, "comparison")}`);
  return between;
}

function clusterOf(text: string): Cluster {
  const cluster = clusterNames.find((one) => one === text || `${one}s` === text);
  if (cluster === undefined) throw new UsageError(`--cluster: ${unknownName(text, clusterNames, "cluster")}`);
  return cluster;
}

/** `group=nursery-1` and `group=nursery-2` keep pigs of either; another facet narrows further. */
function whereOf(texts: readonly string[]): Where {
  const where: Partial<Record<(typeof facetNames)[number], string[]>> = {};
  for (const text of texts) {
    const [, name, value] = /^([^=]+)=(.+)$/.exec(text) ?? [];
    if (name === undefined || value === undefined)
      throw new UsageError(
        `--where: "${text}" does not fit; write facet=value, such as --where group=nursery-2`,
      );
    const [facet] = choices("--where", name, facetNames);
    if (facet !== undefined) where[facet] = [...(where[facet] ?? []), value.trim()];
  }
  return where;
}

function written(
  format: "text" | "json" | "csv" | "markdown",
  report: CompareReport,
  options: CompareCommandOptions,
): string {
  switch (format) {
    case "json":
      return compareJson(report);
    case "csv":
      return compareCsv(report);
    case "markdown":
      return compareMarkdown(report);
    case "text":
      return compareText(report, resultStyle(options), options.quiet === true);
  }
}
