/** `carcase explain`: what is this rule, scale, organ or word, and who says so? */
import {
  type Explanation,
  explain as explainName,
  houseScaleTopics,
  nearestNames,
  type Topic,
  topics,
} from "../explain/index.ts";
import { explainJson, explainListJson } from "../formats/explain/json.ts";
import { explainListText, explainText } from "../formats/explain/text.ts";
import { listing } from "../words/listing.ts";
import type { Run } from "./run.ts";
import { withCheckedScales } from "./sound-cases.ts";
import { UsageError } from "./usage-error.ts";

interface Formats {
  readonly list: (all: readonly Topic[]) => string;
  readonly one: (explanations: readonly Explanation[]) => string;
}

export async function explain(run: Run): Promise<number> {
  const written = run.format<Formats>({
    text: { list: (all) => explainListText(all, run.style), one: (found) => explainText(found, run.style) },
    json: { list: explainListJson, one: explainJson },
  });
  const own = await ownTopics(run);
  const [name] = run.paths;
  if (name === undefined) run.write(written.list([...topics, ...own]));
  else {
    const explanations = explainName(name, own);
    if (explanations.length === 0) throw new UsageError(unknown(name, own));
    run.write(written.one(explanations));
  }
  return run.end();
}

/** Scales of the practice, named in the settings of the current folder; what is wrong with them is said. */
async function ownTopics(run: Run): Promise<Topic[]> {
  const { scales, unreadable } = await withCheckedScales(run.settings());
  run.faults([...unreadable, ...scales.flatMap((one) => one.faults)]);
  return houseScaleTopics(scales.filter((one) => one.faults.length === 0));
}

function unknown(name: string, own: readonly Topic[]): string {
  const near = nearestNames(name, 4, own);
  return near.length === 0
    ? `nothing is called "${name}"; carcase explain lists what can be explained`
    : `nothing is called "${name}". Did you mean ${listing(near, "or")}?`;
}
