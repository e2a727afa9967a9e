/** What laboratories look for: by which names, and the samples that diseases ask for are told elsewhere. */
import { agents, agentsSource } from "../knowledge/agents.ts";
import { section, type Topic, yamlSection } from "./explanation.ts";

export const agentTopics: readonly Topic[] = [...agents].map(([id, { name, kind, of, short = [] }]) => ({
  kind: "agent",
  name: id,
  title: name,
  aliases: [name, ...short],
  explain: () => ({
    sections: [
      ...section(null, [
        `A ${kind}${of === undefined ? "" : `; a positive for it is a positive for ${agents.get(of)?.name}`}.`,
      ]),
      ...section("Also called", short),
      ...yamlSection(
        "In results.yaml",
        `- {sample: 03-A, test: pcr, agent: ${id}, interpretation: negative}`,
      ),
    ],
    source: agentsSource,
  }),
}));
