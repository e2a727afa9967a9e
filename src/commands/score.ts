/** `carcase score`: what does each published scale make of each pig? */
import type { Archive } from "../cases/index.ts";
import { herdText } from "../formats/herd/document.ts";
import { scoreCsv } from "../formats/score/csv.ts";
import { scoreJson } from "../formats/score/json.ts";
import { scoreMatrix } from "../formats/score/matrix.ts";
import { scoreText } from "../formats/score/text.ts";
import { groupDimensions, groupScores, type HerdScores } from "../herd/index.ts";
import { type ScoredCase, scoreCases } from "../score/index.ts";
import type { CommonOptions } from "./options.ts";
import { asUsage, ids, manyOf } from "./parsers.ts";
import type { Run } from "./run.ts";
import { UsageError } from "./usage-error.ts";

export interface ScoreOptions extends CommonOptions {
  readonly scale?: readonly string[];
  readonly by?: string;
  readonly matrix?: true;
  readonly ascii?: true;
  readonly all?: true;
}

interface Scores {
  readonly cases: readonly ScoredCase[];
  readonly groups: readonly HerdScores[] | undefined;
  readonly archive: Archive;
}

export async function score(run: Run<ScoreOptions>): Promise<number> {
  const { options } = run;
  const written = run.format<(scores: Scores) => string>({
    text: (scores) => text(scores, run),
    json: ({ cases, groups }) => scoreJson({ cases }, groups),
    csv: ({ cases, archive }) => scoreCsv(cases, archive),
  });
  checkTogether(options);
  const by = options.by === undefined ? undefined : manyOf("--by", options.by, groupDimensions);
  const chosen = ids("scales", "--scale", options.scale?.join(","));
  const archive = await run.countable();
  const scores = asUsage("--scale", () => ({
    ...scoreCases(archive, chosen),
    groups: by && groupScores(archive, { by, ...chosen }),
    archive,
  }));
  if (archive.cases.length > 0 || options.format !== "text") run.write(written(scores));
  return run.end();
}

function checkTogether({ format, by, matrix, ascii }: ScoreOptions): void {
  if (matrix && format !== "text") throw new UsageError("--matrix is a text for people; leave out --format");
  if (matrix && by !== undefined)
    throw new UsageError("--matrix shows pigs and --by shows groups; choose one");
  if (by !== undefined && format === "csv")
    throw new UsageError("--format csv is one row a pig and scale; for groups write --format json or text");
  if (ascii && !matrix) throw new UsageError("--ascii goes with --matrix");
}

function text(
  { cases, groups, archive }: Scores,
  { options, style, width, bars }: Run<ScoreOptions>,
): string {
  if (options.matrix)
    return scoreMatrix(cases, archive, {
      style,
      alphabet: options.ascii || !bars ? "ascii" : "unicode",
      width,
    });
  const look = { all: options.all === true || options.scale !== undefined, quiet: options.quiet === true };
  return groups === undefined
    ? scoreText(cases, archive, style, { ...look, width })
    : herdText({ estimates: [], scores: groups }, style, { width, all: true });
}
