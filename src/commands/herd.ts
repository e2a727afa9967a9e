/** `carcase herd`: how common and how bad, by visit, group and selection basis, with intervals? */
import { type Archive, unknownName } from "../cases/index.ts";
import { herdCsv } from "../formats/herd/csv.ts";
import { herdMarkdown, herdText } from "../formats/herd/document.ts";
import { herdJson } from "../formats/herd/json.ts";
import { herdPlot } from "../formats/herd/plot.ts";
import { clusterKinds, type Dimension, dimensions, type HerdReport, herdEstimates } from "../herd/index.ts";
import { snoutReading } from "../reading/index.ts";
import { BINOMIAL_METHODS } from "../statistics/index.ts";
import { type AccuracyOptions, herdAccuracy } from "./herd-accuracy.ts";
import { asUsage, idList } from "./lists.ts";
import { whole } from "./numbers.ts";
import { chosenFormat, openArchive } from "./open-archive.ts";
import type { CommonOptions } from "./options.ts";
import { countable } from "./sound-cases.ts";
import { pageWidth, resultStyle, writeResult } from "./terminal.ts";
import { UsageError } from "./usage-error.ts";

export interface HerdCommandOptions extends CommonOptions, AccuracyOptions {
  readonly by: string;
  readonly level?: string;
  readonly indicator?: string;
  readonly scale?: string;
  readonly interval?: string;
  readonly finite?: true;
  readonly cluster?: string;
  readonly combine?: true;
  readonly bootstrap?: true;
  readonly seed?: string;
  readonly plot?: true;
}

type Format = "text" | "json" | "csv" | "markdown";

export async function runHerd(paths: readonly string[], options: HerdCommandOptions): Promise<number> {
  const format = chosenFormat(options, ["text", "json", "csv", "markdown"]);
  if (options.plot === true && format !== "text")
    throw new UsageError(`--plot is drawn as text; leave out --format ${format}`);
  const chosen = choicesOf(options);
  const { archive, failed } = await countable(openArchive(paths, options), options);
  const report = asUsage("herd", () => herdEstimates(archive, chosen));
  const text = written(format, report, archive, options);
  if (archive.cases.length > 0 || format === "json" || format === "csv") writeResult(text, options);
  return failed ? 2 : 0;
}

function written(format: Format, report: HerdReport, archive: Archive, options: HerdCommandOptions): string {
  if (format === "csv") return herdCsv(report);
  const style = resultStyle(options);
  if (options.plot === true) return herdPlot(report, style);
  const snouts = snoutReading(archive);
  if (format === "json") return herdJson(report, snouts);
  if (format === "markdown") return herdMarkdown(report, snouts);
  return herdText(report, style, pageWidth(options), snouts);
}

function choicesOf(options: HerdCommandOptions) {
  return {
    by: dimensionsOf(options.by),
    ...levelOf(options.level),
    ...idList("indicators", options.indicator, "--indicator"),
    ...idList("scales", options.scale, "--scale"),
    ...(options.interval !== undefined && {
      interval: oneOf("--interval", options.interval, BINOMIAL_METHODS),
    }),
    ...(options.cluster !== undefined && { cluster: oneOf("--cluster", options.cluster, clusterKinds) }),
    ...(options.finite === true && { finite: true }),
    ...(options.combine === true && { combine: true }),
    ...herdAccuracy(options),
    ...seedOf(options),
  };
}

function oneOf<Word extends string>(option: string, text: string, known: readonly Word[]): Word {
  const word = known.find((one) => one === text.trim().replaceAll("_", "-"));
  if (word === undefined) throw new UsageError(`${option}: ${unknownName(text.trim(), known, "choice")}`);
  return word;
}

function seedOf({ bootstrap, seed }: HerdCommandOptions): { seed?: number } {
  if (bootstrap === true) return { seed: seed === undefined ? 1 : whole("--seed", seed, 0, 4_294_967_295) };
  if (seed !== undefined) throw new UsageError("--seed is for --bootstrap; without it nothing is drawn");
  return {};
}

function dimensionsOf(text: string): readonly Dimension[] {
  if (text === "none") return [];
  return text.split(",").map((part) => {
    const name = part.trim().replaceAll("-", "_");
    const dimension = dimensions.find((known) => known === name);
    if (dimension === undefined)
      throw new UsageError(`--by: ${unknownName(part.trim(), [...dimensions, "none"], "part")}`);
    return dimension;
  });
}

function levelOf(text: string | undefined): { level?: number } {
  if (text === undefined) return {};
  const found = /^(\d+(?:\.\d+)?|\.\d+)\s*(%?)$/.exec(text.trim());
  const level =
    found === null ? Number.NaN : Number((Number(found[1]) / (found[2] === "%" ? 100 : 1)).toPrecision(12));
  if (!(level > 0 && level < 1))
    throw new UsageError(
      `--level: "${text}" is no confidence level; write a share above 0 and below 1, such as 0.95 or 95%`,
    );
  return { level };
}
