/** How a scale comes to its score, and what its numbers mean. */
import type { Scale } from "../knowledge/index.ts";
import { scales } from "../knowledge/scales.ts";
import { describeScale } from "./describe-scale.ts";
import type { Block } from "./described.ts";
import type { Section, Topic } from "./explanation.ts";
import { inline } from "./inline.ts";

export const scaleTopic = (scale: Scale): Topic => ({
  kind: "scale",
  name: scale.id,
  title: scale.title,
  aliases: [],
  explain: () => ({ sections: describeScale(scale).flatMap(sections), source: scale.source }),
});

export const scaleTopics: readonly Topic[] = [...scales.values()].map(scaleTopic);

/** A block as lines: a table becomes a line a row. */
function sections({ heading, text = [], table, record, after = [] }: Block): Section[] {
  const rows = (table?.rows ?? []).map(([first = "", ...rest]) =>
    [first, rest.filter((cell) => cell !== "").join(", ")].filter((part) => part !== "").join(": "),
  );
  const typed = record === undefined ? [] : [inline(record)];
  return [{ heading, lines: [...text, ...rows, ...typed, ...after] }];
}
