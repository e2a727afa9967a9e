/** `explain`: everything that goes by a name, or the names nearest to it. */
import { distance } from "fastest-levenshtein";
import { agentTopics } from "./agents.ts";
import { organTopics, protocolTopics, systemTopics } from "./body.ts";
import { diseaseTopics, orderTopics } from "./diseases.ts";
import { type Explanation, type Kind, kinds, lists, type Topic } from "./explanation.ts";
import { alarmTopics, indicatorTopics } from "./indicators-and-alarms.ts";
import { knifeTopics } from "./knife.ts";
import { labelTopics, markTopics } from "./labels-and-parcels.ts";
import { ageClassTopics, deathTopics, factTopics, familyTopics, selectionTopics } from "./record.ts";
import { ruleTopics } from "./rules.ts";
import { keepsTopics, sampleSetTopics } from "./sample-sets.ts";
import { containerTopics, materialTopics, testTopics } from "./sampling.ts";
import { scaleTopics } from "./scales.ts";
import { settingsTopics } from "./settings.ts";
import { tableTopics } from "./tables.ts";
import { timeTopics } from "./time-limits.ts";
import { wordTopics } from "./words.ts";

/** All that can be explained, by kind. */
export const topics: readonly Topic[] = [
  ...ruleTopics,
  ...tableTopics,
  ...alarmTopics,
  ...diseaseTopics,
  ...orderTopics,
  ...protocolTopics,
  ...systemTopics,
  ...organTopics,
  ...knifeTopics,
  ...scaleTopics,
  ...indicatorTopics,
  ...selectionTopics,
  ...ageClassTopics,
  ...deathTopics,
  ...factTopics,
  ...familyTopics,
  ...wordTopics,
  ...materialTopics,
  ...containerTopics,
  ...testTopics,
  ...timeTopics,
  ...sampleSetTopics,
  ...keepsTopics,
  ...agentTopics,
  ...labelTopics,
  ...markTopics,
  ...settingsTopics,
].sort((a, b) => kinds.indexOf(a.kind) - kinds.indexOf(b.kind));

/** Letter case, blanks and brackets do not matter. */
const plain = (text: string): string =>
  text
    .trim()
    .toLowerCase()
    .replace(/^\[(.*)\]$/, "$1")
    .replaceAll(/[\s_-]+/g, "-");

/**
 * Everything that goes by a name: a protocol and a system may share it. A part of a name (lungs for
 * respiratory.lungs) or a word of a list counts where no name is written so.
 * @param own what a practice has beside the topics that ship (see `houseScaleTopics`)
 * @returns an empty list when nothing goes by it
 */
export function explain(name: string, own: readonly Topic[] = []): Explanation[] {
  const written = plain(name);
  const all = [...topics, ...own];
  const named = all.filter((topic) => plain(topic.name) === written);
  const found =
    named.length > 0 ? named : all.filter((topic) => topic.aliases.some((one) => plain(one) === written));
  return found.map(({ kind, name: id, title, explain: text }) => ({ kind, name: id, title, ...text() }));
}

/** The kind of which all names are asked for: processes, time-limits; or process, where nothing is called so itself. */
export const kindCalled = (name: string): Kind | undefined =>
  kinds.find((kind) => [lists.get(kind), plain(kind), `${plain(kind)}s`].includes(plain(name)));

/** The names nearest to what was written, the nearest first; none when nothing is near. */
export function nearestNames(name: string, most = 4, own: readonly Topic[] = []): string[] {
  const written = plain(name);
  if (written === "" || written.length > 100) return [];
  const names = [...topics, ...own].flatMap((topic) => [topic.name, ...topic.aliases]);
  const words = [...names, ...lists.values()];
  return [...new Set(words)]
    .map((word) => ({ word, rank: rank(written, plain(word)) }))
    .filter((one) => one.rank < Number.POSITIVE_INFINITY)
    .sort((a, b) => a.rank - b.rank || (a.word < b.word ? -1 : 1))
    .slice(0, most)
    .map((one) => one.word);
}

/** Parts in another order (pig-treated) and few letters apart are nearest; then names that begin so, or have it in them. */
function rank(written: string, known: string): number {
  if (written.includes("-") && inOrder(written) === inOrder(known)) return 0;
  const apart = distance(written, known);
  if (apart <= Math.max(1, Math.floor(known.length / 4)) && apart < written.length) return apart;
  if (written.length >= 3 && known.startsWith(written)) return 50 + apart;
  if (written.length >= 4 && known.includes(written)) return 100 + apart;
  return apart <= Math.max(2, Math.floor(known.length * 0.45)) && apart < written.length
    ? 200 + apart
    : Number.POSITIVE_INFINITY;
}

const inOrder = (word: string): string => word.split("-").sort().join("-");
