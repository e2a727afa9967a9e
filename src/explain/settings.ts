/** The keys of carcase.yaml, as their schema describes them. */
import { settingsKeys } from "../generated/settings-keys.ts";
import { flow } from "../words/flow.ts";
import { lists, section, type Topic, yamlSection } from "./explanation.ts";

export const settingsTopics: readonly Topic[] = settingsKeys.map(({ name, description, examples }) => ({
  kind: "setting",
  name: `settings.${name}`,
  title: description.split(/[.:;] |, as /)[0] ?? name,
  // A word that lists a kind, or is one, names nothing else.
  aliases: ([...lists].flat() as string[]).includes(name.replaceAll("_", "-")) ? [] : [name],
  explain: () => ({
    sections: [
      ...section(null, [`${description}.`]),
      ...yamlSection(
        "In carcase.yaml",
        examples[0] === undefined ? undefined : `${name}: ${flow(examples[0])}`,
      ),
    ],
    source: { cite: "a setting of carcase itself and no published value", confidence: "common-practice" },
  }),
}));
