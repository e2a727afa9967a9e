/** `carcase explain`: what is this rule, scale, organ or word, and who says so? */
import {
  type Explanation,
  explainCase,
  explain as explainName,
  houseScaleTopics,
  type Kind,
  kindCalled,
  nearestNames,
  type Topic,
  topics,
} from "../explain/index.ts";
import { explainJson, explainListJson } from "../formats/explain/json.ts";
import { explainKindsText, explainListText, explainText } from "../formats/explain/text.ts";
import { listing } from "../words/listing.ts";
import { withFilesOfNames } from "./case-names.ts";
import type { Run } from "./run.ts";
import { withCheckedScales } from "./sound-cases.ts";
import { UsageError } from "./usage-error.ts";

interface Formats {
  readonly kinds: (all: readonly Topic[]) => string;
  readonly list: (kind: Kind, all: readonly Topic[]) => string;
  readonly one: (explanations: readonly Explanation[]) => string;
}

export async function explain(run: Run): Promise<number> {
  const written = run.format<Formats>({
    text: {
      kinds: (all) => explainKindsText(all, run.style, run.width),
      list: (kind, all) => explainListText(kind, all, run.style, run.width),
      one: (found) => explainText(found, run.style, run.width),
    },
    json: {
      kinds: explainListJson,
      list: (kind, all) => explainListJson(all.filter((one) => one.kind === kind)),
      one: explainJson,
    },
  });
  const [name] = run.paths;
  if (name !== undefined && /\.ya?ml$/i.test(name)) return caseNamed(name);
  const own = await ownTopics(run);
  const all = [...topics, ...own];
  if (name === undefined) {
    run.write(written.kinds(all));
    return run.end();
  }
  const explanations = explainName(name, own);
  const kind = kindCalled(name);
  if (explanations.length > 0) run.write(written.one(explanations));
  else if (kind !== undefined) run.write(written.list(kind, all));
  else if (withFilesOfNames([name])[0] !== name) return caseNamed(name);
  else throw new UsageError(unknown(name, own));
  return run.end();

  function caseNamed(file: string): number {
    const { cases } = run.archive();
    run.faults(cases.flatMap(({ faults, visit }) => [...faults, ...(visit?.faults ?? [])]));
    if (cases.length > 0) run.write(written.one(cases.map(explainCase)));
    else if (!run.failed) throw new UsageError(`${file}: it is no case; name the file of one pig`);
    return run.end();
  }
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
    ? `nothing is called "${name}"; carcase explain lists the kinds of names that there are`
    : `nothing is called "${name}". Did you mean ${listing(near, "or")}?`;
}
