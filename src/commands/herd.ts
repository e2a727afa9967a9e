/** `carcase herd`: how common and how bad, by visit, group and selection basis, with exact intervals? */
import { unknownName } from "../cases/index.ts";
import { herdJson } from "../formats/herd-json.ts";
import { herdText } from "../formats/herd-text.ts";
import { snoutText } from "../formats/snout-text.ts";
import { type Dimension, dimensions, herdEstimates } from "../herd/index.ts";
import { snoutReading } from "../reading/index.ts";
import { asUsage, idList } from "./lists.ts";
import { chosenFormat, openArchive } from "./open-archive.ts";
import type { CommonOptions } from "./options.ts";
import { withoutFormatFaults } from "./sound-cases.ts";
import { resultStyle, writeResult } from "./terminal.ts";
import { UsageError } from "./usage-error.ts";

export interface HerdCommandOptions extends CommonOptions {
  readonly by: string;
  readonly level?: string;
  readonly indicator?: string;
  readonly scale?: string;
}

export function runHerd(paths: readonly string[], options: HerdCommandOptions): number {
  const format = chosenFormat(options, ["text", "json"]);
  const by = dimensionsOf(options.by);
  const level = levelOf(options.level);
  const { archive, failed } = withoutFormatFaults(openArchive(paths, options), options);
  const report = asUsage("herd", () =>
    herdEstimates(archive, {
      by,
      ...level,
      ...idList("indicators", options.indicator),
      ...idList("scales", options.scale),
    }),
  );
  const snouts = snoutReading(archive);
  const style = resultStyle(options);
  const text =
    format === "json" ? herdJson(report, snouts) : `${herdText(report, style)}${snoutText(snouts, style)}`;
  if (archive.cases.length > 0 || format === "json") writeResult(text, options);
  return failed ? 2 : 0;
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
  const level = Number(text);
  if (!(level > 0.5 && level < 1))
    throw new UsageError(
      `--level: "${text}" is no confidence level; write a share above 0.5 and below 1, such as 0.95`,
    );
  return { level };
}
