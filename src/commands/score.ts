/** `carcase score`: what does each published scale make of each pig? */
import { scoreJson } from "../formats/score-json.ts";
import { scoreText } from "../formats/score-text.ts";
import { scoreCases } from "../score/index.ts";
import { asUsage, idList } from "./lists.ts";
import { chosenFormat, openArchive } from "./open-archive.ts";
import type { CommonOptions } from "./options.ts";
import { withoutFormatFaults } from "./sound-cases.ts";
import { resultStyle, writeResult } from "./terminal.ts";

export function runScore(
  paths: readonly string[],
  options: CommonOptions & { readonly scale?: string },
): number {
  const format = chosenFormat(options, ["text", "json"]);
  const { archive, failed } = withoutFormatFaults(openArchive(paths, options), options);
  const scored = asUsage("--scale", () => scoreCases(archive, idList("scales", options.scale)));
  const text = format === "json" ? scoreJson(scored) : scoreText(scored.cases, archive, resultStyle(options));
  if (archive.cases.length > 0 || format === "json") writeResult(text, options);
  return failed ? 2 : 0;
}
