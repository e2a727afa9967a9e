/** How a scale comes to its score, and what its numbers mean. */
import type { HouseScale } from "../cases/index.ts";
import type { Scale } from "../knowledge/index.ts";
import { scales } from "../knowledge/scales.ts";
import { describeScale } from "./describe-scale.ts";
import type { Block } from "./described.ts";
import { type Section, section, type Topic } from "./explanation.ts";
import { inline } from "./inline.ts";

const scaleTopic = (scale: Scale): Topic => ({
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

/** Scales of the practice's own, explained like those that ship; with a word that they are the practice's. */
export const houseScaleTopics = (files: readonly HouseScale[]): Topic[] =>
  files.flatMap(({ scale, file }) => {
    if (scale === undefined) return [];
    const topic = scaleTopic(scale);
    const explain = (): ReturnType<Topic["explain"]> => {
      const { sections, source } = topic.explain();
      return {
        sections: [...section(null, [`A scale of your practice, from ${file}.`]), ...sections],
        source,
      };
    };
    return [{ ...topic, explain }];
  });
