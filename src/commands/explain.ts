/** `carcase explain`: what is this rule, scale, organ or word, and who says so? */
import { readSettings } from "../cases/index.ts";
import { explain, houseScaleTopics, nearestNames, type Topic, topics } from "../explain/index.ts";
import { explainJson, explainListJson } from "../formats/explain/json.ts";
import { explainListText, explainText } from "../formats/explain/text.ts";
import { faultsText } from "../formats/faults-text.ts";
import { listing } from "../words/listing.ts";
import { withCheckedScales } from "./checked-scales.ts";
import { chosenFormat } from "./open-archive.ts";
import type { OutputOptions } from "./options.ts";
import { resultStyle, styleFor, writeResult } from "./terminal.ts";
import { UsageError } from "./usage-error.ts";

export interface ExplainOptions extends OutputOptions {
  readonly config?: string;
}

export async function runExplain(name: string | undefined, options: ExplainOptions): Promise<number> {
  const format = chosenFormat(options, ["text", "json"]);
  const style = resultStyle(options);
  const { own, failed } = await ownTopics(options);
  if (name === undefined) {
    const all = [...topics, ...own];
    writeResult(format === "json" ? explainListJson(all) : explainListText(all, style), options);
    return failed ? 2 : 0;
  }
  const explanations = explain(name, own);
  if (explanations.length === 0) throw new UsageError(unknown(name, own));
  writeResult(format === "json" ? explainJson(explanations) : explainText(explanations, style), options);
  return failed ? 2 : 0;
}

/** Scales of the practice, named in the settings of the current folder; what is wrong with them is said. */
async function ownTopics(options: ExplainOptions): Promise<{ own: Topic[]; failed: boolean }> {
  const { scales, unreadable } = await withCheckedScales(readSettings(".", options.config));
  const faults = [...unreadable, ...scales.flatMap((one) => one.faults)];
  process.stderr.write(faultsText(faults, styleFor(process.stderr, options)));
  const sound = scales.filter((one) => one.faults.length === 0);
  return { own: houseScaleTopics(sound), failed: faults.length > 0 };
}

function unknown(name: string, own: readonly Topic[]): string {
  const near = nearestNames(name, 4, own);
  return near.length === 0
    ? `nothing is called "${name}"; carcase explain lists what can be explained`
    : `nothing is called "${name}". Did you mean ${listing(near, "or")}?`;
}
