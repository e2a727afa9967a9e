/** `carcase explain`: what is this rule, scale, organ or word, and who says so? */
import { explain, nearestNames, topics } from "../explain/index.ts";
import { explainJson, explainListJson } from "../formats/explain-json.ts";
import { explainListText, explainText } from "../formats/explain-text.ts";
import { listing } from "../words/listing.ts";
import { chosenFormat } from "./open-archive.ts";
import type { OutputOptions } from "./options.ts";
import { resultStyle, writeResult } from "./terminal.ts";
import { UsageError } from "./usage-error.ts";

export function runExplain(name: string | undefined, options: OutputOptions): number {
  const format = chosenFormat(options, ["text", "json"]);
  const style = resultStyle(options);
  if (name === undefined) {
    writeResult(format === "json" ? explainListJson(topics) : explainListText(topics, style), options);
    return 0;
  }
  const explanations = explain(name);
  if (explanations.length === 0) throw new UsageError(unknown(name));
  writeResult(format === "json" ? explainJson(explanations) : explainText(explanations, style), options);
  return 0;
}

function unknown(name: string): string {
  const near = nearestNames(name);
  return near.length === 0
    ? `nothing is called "${name}"; carcase explain lists what can be explained`
    : `nothing is called "${name}". Did you mean ${listing(near, "or")}?`;
}
