/** Containers and tests of samples: what each spoils, and what to take instead. */
import { autolysis, sampleRules } from "../knowledge/index.ts";
import { listing } from "../words/listing.ts";
import { section, type Topic } from "./explanation.ts";

const unfit = Object.values(sampleRules.unfit);
const kept = Object.values(autolysis.kinds);

const words = (id: string): string => id.replaceAll("-", " ");
const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** What goes into a container in the rules of the knowledge files. */
export const containerTopics: readonly Topic[] = [...new Set(unfit.flatMap(({ into }) => into))].map(
  (id) => ({
    kind: "container",
    name: id,
    title: `Container of a sample: ${words(id)}`,
    aliases: [words(id)],
    explain: () => ({
      sections: section(
        "Not for",
        unfit
          .filter(({ into }) => into.includes(id as (typeof into)[number]))
          .map(({ tests, why, instead }) => `${listing(tests)}: ${why}. ${instead}.`),
      ),
      source: sampleRules.source,
    }),
  }),
);

/** What is asked of the laboratory. */
export const testTopics: readonly Topic[] = [
  ...new Set([...unfit.flatMap(({ tests }) => tests), ...kept.flatMap(({ tests }) => tests)].map(String)),
].map((id) => ({
  kind: "test",
  name: id,
  title: `${capital(words(id))}, asked of a sample`,
  aliases: [words(id)],
  explain: () => ({
    sections: [
      ...section(
        "Not from",
        unfit
          .filter(({ tests }) => tests.map(String).includes(id))
          .map(({ into, why, instead }) => `${listing(into)}: ${why}. ${instead}.`),
      ),
      ...section(
        "After the time limit",
        kept
          .filter(({ tests }) => tests.map(String).includes(id))
          .map(({ title, still }) => `${title}: ${still}.`),
      ),
    ],
    source: sampleRules.source,
  }),
}));
