/** Materials, containers and tests of samples: what each spoils, and what to take instead. */
import type { CaseFile } from "../generated/case.types.ts";
import { type Definition, definitions } from "../knowledge/definitions.ts";
import { autolysis, sampleRules, sourceLine } from "../knowledge/index.ts";
import { capital, listing } from "../words/listing.ts";
import { type Section, section, type Topic, yamlSection } from "./explanation.ts";

const unfit = Object.values(sampleRules.unfit);
const kept = Object.values(autolysis.kinds);

const words = (id: string): string => id.replaceAll("-", " ");

type Sample = NonNullable<CaseFile["samples"]>[number];

/** Every container and test of the format, as people call it. */
const containers: Readonly<Record<NonNullable<Sample["into"]>, string>> = {
  formalin: "formalin",
  chilled: "chilled",
  frozen: "frozen",
  ethanol: "ethanol",
  "transport-medium": "swab in transport medium",
  "charcoal-medium": "swab in charcoal medium",
  "anaerobic-medium": "swab in anaerobic medium",
  "viral-medium": "swab in viral medium",
  "dry-swab": "dry swab",
  "plain-tube": "plain tube",
  "edta-tube": "EDTA tube",
  "heparin-tube": "heparin tube",
  "citrate-tube": "citrate tube",
};
const tests: Readonly<Record<NonNullable<Sample["for"]>[number], string>> = {
  histology: "histology",
  immunohistochemistry: "immunohistochemistry",
  culture: "culture",
  pcr: "PCR",
  serology: "serology",
  "virus-isolation": "virus isolation",
  toxicology: "toxicology",
  chemistry: "blood chemistry",
  parasitology: "parasitology",
  cytology: "cytology",
  sequencing: "sequencing",
  antibiogram: "antibiogram",
  archive: "archive",
};

const list = (words: readonly string[], names: Readonly<Record<string, string>>): string =>
  listing(words.map((word) => names[word] ?? word));
export const containerNames = (into: readonly string[]): string => list(into, containers);
export const testNames = (of: readonly string[]): string => list(of, tests);
/** What the word means, and what spoils it; the definitions have a source of their own. */
const told = (
  definition: Definition | undefined,
  sections: readonly Section[],
  otherwise: string,
): readonly Section[] => [
  ...section(
    null,
    definition === undefined ? [] : [`${definition.means} Source: ${sourceLine(definition.source)}.`],
  ),
  ...(sections.length > 0 ? sections : section(null, [otherwise])),
];

/** What a sample comes from, besides organs. */
export const materialTopics: readonly Topic[] = Object.entries(sampleRules.materials).map(
  ([id, { title, contaminated, outside }]) => ({
    kind: "sample material",
    name: id,
    title: `${capital(title)}, as a sample`,
    aliases: [title],
    explain: () => ({
      sections: [
        ...yamlSection("Write", `samples: [{id: 01-A, from: ${id}}]`),
        ...section(null, [
          ...(contaminated === true ? ["It is full of other germs by nature."] : []),
          ...(outside === true ? ["It is not of the carcass, so no time since death counts."] : []),
        ]),
      ],
      source: sampleRules.source,
    }),
  }),
);

/** What a sample is put into, and what that spoils. */
export const containerTopics: readonly Topic[] = Object.entries(containers).map(([id, title]) => ({
  kind: "container",
  name: id,
  title: `Container of a sample: ${title}`,
  aliases: [title, words(id)],
  explain: () => ({
    sections: told(
      definitions.container[id],
      section(
        "Not for",
        unfit
          .filter(({ into }) => into.map(String).includes(id))
          .map(({ tests: of, why, instead }) => `${list(of, tests)}: ${why}. ${instead}.`),
      ),
      "No test is known here that it spoils.",
    ),
    source: sampleRules.source,
  }),
}));

/** What is asked of the laboratory. */
export const testTopics: readonly Topic[] = Object.entries(tests).map(([id, title]) => ({
  kind: "test",
  name: id,
  title: `${capital(title)}, asked of a sample`,
  aliases: [title, words(id)],
  explain: () => ({
    sections: told(
      definitions.test[id],
      [
        ...section(
          "Not from",
          unfit
            .filter(({ tests: of }) => of.map(String).includes(id))
            .map(({ into, why, instead }) => `${list(into, containers)}: ${why}. ${instead}.`),
        ),
        ...section(
          "After the time limit",
          kept
            .filter(({ tests: of }) => of.map(String).includes(id))
            .map(({ title: of, still }) => `${of}: ${still}.`),
        ),
      ],
      "No container is known here that spoils it.",
    ),
    source: sampleRules.source,
  }),
}));
