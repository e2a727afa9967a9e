/** Scales of the practice's own, explained like those that ship; with a word that they are the practice's. */
import type { HouseScale } from "../cases/index.ts";
import { section, type Topic } from "./explanation.ts";
import { scaleTopic } from "./scales.ts";

/** A topic for each scale file that can be used. */
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
