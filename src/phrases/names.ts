/** What a word or a few of them name: an organ, a part of one, a word of a list, a side. */
import { type Definition, definitions } from "../knowledge/definitions.ts";
import { organs, type PlacedOrgan } from "../knowledge/index.ts";
import { nearest } from "../words/nearest.ts";

/** Keys of a finding that take a word of a list. */
export const wordKeys = [
  "process",
  "distribution",
  "colour",
  "consistency",
  "exudate",
  "severity",
  "duration",
  "margin",
  "contour",
  "shape",
  "certainty",
] as const;
type WordKey = (typeof wordKeys)[number];

export type Named =
  | { readonly is: "organ"; readonly organ: PlacedOrgan; readonly within: boolean }
  | { readonly is: "word"; readonly key: WordKey; readonly word: string }
  | { readonly is: "side"; readonly side: "left" | "right" | "both" }
  | { readonly is: "lobe"; readonly lobe: string }
  | { readonly is: "normal" }
  | { readonly is: "not-examined" }
  /** A word that no case takes, and what is said of it. */
  | { readonly is: "term"; readonly means: string; readonly write: string | undefined };

/** Small letters without marks; ä is a, ß is ss, and hyphens are spaces. */
const folded = (text: string): string =>
  text
    .toLowerCase()
    .normalize("NFD")
    .replaceAll(/\p{M}/gu, "")
    .replaceAll("ß", "ss")
    .replaceAll(/([ao])e/g, "$1")
    .replaceAll(/[\s_-]+/g, " ")
    .replaceAll(".", "")
    .trim();

const index = new Map<string, Named[]>();
/** The names as people write them, without the short ones, which are near to too much. */
const written = new Map<string, string>();
/** No name has more words; a test holds it. */
export const longestName = 8;

function add(name: string, named: Named): void {
  const key = folded(name);
  const known = index.get(key) ?? [];
  if (known.some((one) => JSON.stringify(idOf(one)) === JSON.stringify(idOf(named)))) return;
  index.set(key, [...known, named]);
  if (key.length > 4 && !written.has(key)) written.set(key, name.replaceAll("_", " "));
}

const idOf = (named: Named): unknown => (named.is === "organ" ? [named.organ.id] : named);

const namesOf = (word: string, { also, de, es, short }: Definition): readonly string[] => [
  word,
  ...[also, de, es, short].flatMap((names) => names ?? []),
];

for (const organ of organs) {
  const { en = [], de = [], es = [], short = [], within = [] } = organ.definition.names ?? {};
  for (const name of [organ.key, ...en, ...de, ...es, ...short])
    add(name, { is: "organ", organ, within: false });
  for (const name of within) add(name, { is: "organ", organ, within: true });
}
for (const key of wordKeys)
  for (const [word, definition] of Object.entries(definitions[key]))
    for (const name of namesOf(word, definition)) add(name, { is: "word", key, word });
for (const [word, definition] of Object.entries(definitions.term))
  for (const name of namesOf(word, definition))
    if (!index.has(folded(name))) add(name, { is: "term", means: definition.means, write: definition.write });
function addRecord(word: string, named: Named): void {
  const definition = definitions.record[word];
  if (definition !== undefined) for (const name of namesOf(word, definition)) add(name, named);
}
for (const side of ["left", "right", "both"] as const) addRecord(side, { is: "side", side });
for (const lobe of ["cranial", "middle", "caudal", "accessory"]) addRecord(lobe, { is: "lobe", lobe });
addRecord("normal", { is: "normal" });
addRecord("not_examined", { is: "not-examined" });

/** Endings of number, gender and manner in three languages: nodes, Zysten, gelbe, roja, diffusely. */
const endings: readonly (readonly [ending: RegExp, instead: string])[] = [
  [/s$/, ""],
  [/es$/, ""],
  [/as?$/, "o"],
  [/os$/, "o"],
  [/en?$/, ""],
  [/n$/, ""],
  [/e[rm]$/, ""],
  [/ly$/, ""],
];

/** What a text names; several where its name has several meanings. */
function meanings(text: string): readonly Named[] {
  const key = folded(text);
  const exact = index.get(key);
  if (exact !== undefined) return exact;
  const stems = new Set([
    ...stemsOf(key),
    ...(key.split(" ").length > 1 ? [key.split(" ").map(shorter).join(" ")] : []),
  ]);
  for (const stem of stems) {
    const found = stem.length > 2 ? index.get(stem) : undefined;
    if (found !== undefined) return found;
  }
  // Organs are named in the plural: kidney, lung, bronchial node.
  return key.length > 2 ? (index.get(`${key}s`)?.filter(({ is }) => is === "organ") ?? []) : [];
}

const stemsOf = (key: string): readonly string[] =>
  endings.flatMap(([ending, instead]) => (ending.test(key) ? [key.replace(ending, instead)] : []));
const shorter = (word: string): string => word.replace(/(?:es|s)$/, "");

export interface Match {
  readonly length: number;
  readonly named: readonly Named[];
}

/** What the first of the words name, as many of them as make a name. */
export function firstName(words: readonly string[]): Match | undefined {
  for (let length = Math.min(longestName, words.length); length > 0; length--) {
    const named = meanings(words.slice(0, length).join(" "));
    if (named.length > 0) return { length, named };
  }
  return undefined;
}

/** The name that was probably meant; nobody misspells the first letter. */
export function nearestName(text: string): string | undefined {
  const key = folded(text);
  const meant = nearest(
    key,
    [...written.keys()].filter((name) => name[0] === key[0]),
  );
  return meant === undefined ? undefined : written.get(meant);
}
