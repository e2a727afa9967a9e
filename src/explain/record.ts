/** The short lists that a case chooses from, and the facts that it states. */

import { definitions } from "../knowledge/definitions.ts";
import {
  ageClasses,
  deathMethods,
  facts,
  factsSource,
  selectionBases,
  selectionSource,
} from "../knowledge/index.ts";
import { section, type Topic } from "./explanation.ts";

export const familyTopics: readonly Topic[] = Object.entries(definitions.signs).map(
  ([name, { title, words }]) => ({
    kind: "sign family",
    name,
    title,
    aliases: [],
    explain: () => ({ sections: section("Words", [words.join(", ")]), source: definitions.source }),
  }),
);

export const selectionTopics: readonly Topic[] = Object.entries(selectionBases).map(([name, basis]) => ({
  kind: "selection basis",
  name,
  title: basis.title,
  aliases: [],
  explain: () => ({
    sections: [
      ...section(null, [`${basis.look}.`]),
      ...section("What a proportion over such pigs is", [`${basis.wording}.`]),
    ],
    source: selectionSource,
  }),
}));

export const ageClassTopics: readonly Topic[] = Object.entries(ageClasses.classes).map(
  ([name, { title, derive, age, weight }]) => ({
    kind: "age class",
    name,
    title,
    aliases: [],
    explain: () => ({
      sections: section(null, [
        ...(derive === undefined
          ? ["It is never worked out from the age: write pig.class."]
          : [`Worked out from an age of ${derive[0]} to ${derive[1]} days.`]),
        ...(age === undefined ? [] : [`Fits an age of ${age[0]} to ${age[1]} days.`]),
        ...(weight === undefined ? [] : [`Fits a weight of ${weight[0]} to ${weight[1]} kg.`]),
      ]),
      source: ageClasses.source,
    }),
  }),
);

export const deathTopics: readonly Topic[] = Object.entries(deathMethods).map(
  ([name, { title, brain, source }]) => ({
    kind: "method of death",
    name,
    title,
    aliases: [],
    explain: () => ({
      sections: section(null, [
        brain === "intact" ? "It leaves the brain to be examined." : "It destroys the brain.",
        "Licensed practice and local law decide which method may be used.",
      ]),
      source,
    }),
  }),
);

export const factTopics: readonly Topic[] = [...facts].map(([name, fact]) => ({
  kind: "fact",
  name,
  title: fact.title,
  aliases: [name.split(".").at(-1) ?? name],
  explain: () => ({
    sections: [
      { heading: "Write", lines: [fact.write], yaml: true },
      ...section("Asked of", [
        ...(fact.only === undefined ? [] : [`only ${fact.only.join(", ")}`]),
        ...(fact.except === undefined ? [] : [`all but ${fact.except.join(", ")}`]),
        ...(fact.bases === undefined ? [] : [`pigs chosen as ${fact.bases.join(", ")}`]),
        ...(fact.manners === undefined ? [] : [`pigs that were ${fact.manners.join(", ")}`]),
      ]),
    ],
    source: factsSource,
  }),
}));
