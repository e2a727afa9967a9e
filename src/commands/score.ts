/** `carcase score`: what does each published scale make of each pig? */
import type { Archive } from "../cases/index.ts";
import { herdText } from "../formats/herd/document.ts";
import { scoreCsv } from "../formats/score/csv.ts";
import { scoreJson } from "../formats/score/json.ts";
import { scoreMatrix } from "../formats/score/matrix.ts";
import { scoreText } from "../formats/score/text.ts";
import { groupDimensions, groupScores, type HerdScores } from "../herd/index.ts";
import { type ScoredCase, scoreCases } from "../score/index.ts";
import { asUsage, choices, idList } from "./lists.ts";
import { chosenFormat, openArchive } from "./open-archive.ts";
import type { ScoreCommandOptions } from "./score-options.ts";
import { countable } from "./sound-cases.ts";
import { pageWidth, resultStyle, showsBars, writeResult } from "./terminal.ts";
import { UsageError } from "./usage-error.ts";

export async function runScore(paths: readonly string[], options: ScoreCommandOptions): Promise<number> {
  const format = chosenFormat(options, ["text", "json", "csv"]);
  checkTogether(options);
  const by = options.by === undefined ? undefined : choices("--by", options.by, groupDimensions);
  const chosen = idList("scales", options.scale?.join(","), "--scale");
  const { archive, failed } = await countable(openArchive(paths, options), options);
  const { cases, groups } = asUsage("--scale", () => ({
    ...scoreCases(archive, chosen),
    groups: by && groupScores(archive, { by, ...chosen }),
  }));
  if (archive.cases.length > 0 || format !== "text")
    writeResult(
      format === "text" ? text(cases, groups, archive, options) : data(format, cases, groups, archive),
      options,
    );
  return failed ? 2 : 0;
}

function checkTogether({ format, by, matrix, ascii }: ScoreCommandOptions): void {
  if (matrix && format !== "text") throw new UsageError("--matrix is a text for people; leave out --format");
  if (matrix && by !== undefined)
    throw new UsageError("--matrix shows pigs and --by shows groups; choose one");
  if (by !== undefined && format === "csv")
    throw new UsageError("--format csv is one row a pig and scale; for groups write --format json or text");
  if (ascii && !matrix) throw new UsageError("--ascii goes with --matrix");
}

function text(
  cases: readonly ScoredCase[],
  groups: readonly HerdScores[] | undefined,
  archive: Archive,
  options: ScoreCommandOptions,
): string {
  const style = resultStyle(options);
  if (options.matrix)
    return scoreMatrix(cases, archive, {
      style,
      alphabet: options.ascii || !showsBars() ? "ascii" : "unicode",
      width: pageWidth(options),
    });
  return groups === undefined
    ? scoreText(cases, archive, style, pageWidth(options))
    : herdText({ estimates: [], scores: groups }, style, pageWidth(options));
}

const data = (
  format: "json" | "csv",
  cases: readonly ScoredCase[],
  groups: readonly HerdScores[] | undefined,
  archive: Archive,
): string => (format === "csv" ? scoreCsv(cases, archive) : scoreJson({ cases }, groups));
