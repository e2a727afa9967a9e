/** Explanations for scripts. Field names are stable; docs/json.md describes them. */
import type { Explanation } from "../../explain/index.ts";
import { toJson } from "../page/json.ts";

export function explainJson(explanations: readonly Explanation[]): string {
  const list = explanations.map(({ kind, name, title, sections, source }) => ({
    kind,
    name,
    title,
    sections: sections.map(({ heading, lines }) => ({ heading, lines })),
    source,
  }));
  return toJson({ explanations: list });
}

/** All that can be explained. */
export function explainListJson(topics: readonly Pick<Explanation, "kind" | "name" | "title">[]): string {
  const list = topics.map(({ kind, name, title }) => ({ kind, name, title }));
  return toJson({ topics: list });
}
