/** Explanations for scripts. Field names are stable; docs/json.md describes them. */
import { type Explanation, kinds, lists } from "../../explain/index.ts";
import { outputJson } from "../page/json.ts";

export function explainJson(explanations: readonly Explanation[]): string {
  const list = explanations.map(({ kind, name, title, sections, source }) => ({
    kind,
    name,
    title,
    sections: sections.map(({ heading, lines }) => ({ heading, lines })),
    source,
  }));
  return outputJson("explain", 1, { explanations: list });
}

/** Names that can be explained, and how many of each kind there are. */
export function explainListJson(topics: readonly Pick<Explanation, "kind" | "name" | "title">[]): string {
  const list = topics.map(({ kind, name, title }) => ({ kind, name, title }));
  const counts = kinds
    .map((kind) => ({ kind, list: lists.get(kind), count: topics.filter((one) => one.kind === kind).length }))
    .filter(({ count }) => count > 0);
  return outputJson("explain-list", 1, { kinds: counts, topics: list });
}
