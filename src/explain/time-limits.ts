/** How long tissue keeps between death and sampling: the keys that settings have under `autolysis:`. */
import { autolysis } from "../knowledge/index.ts";
import { section, type Topic, yamlSection } from "./explanation.ts";

const { bands, kinds, limits } = autolysis;

/** The limit that ships as the settings would write it: in hours. */
function changed(band: string, kind: string): ReturnType<typeof yamlSection> {
  const [, number = "", unit] = /^(\d+(?:\.\d+)?) (min|h)$/.exec(limits[band]?.[kind] ?? "") ?? [];
  if (unit === undefined) return [];
  const hours = Number((Number(number) / (unit === "min" ? 60 : 1)).toPrecision(2));
  return yamlSection(
    "Another limit, in carcase.yaml, in hours (this is the one that ships)",
    `autolysis: {${band}: {${kind}: ${hours}}}`,
  );
}

const kindTopics: readonly Topic[] = Object.entries(kinds).map(([name, kind]) => ({
  kind: "time limit",
  name,
  title: `How long tissue keeps for ${kind.title}`,
  aliases: [],
  explain: () => ({
    sections: [
      ...section(
        "From death to sampling",
        Object.entries(limits).flatMap(([band, of]) =>
          of[name] === undefined ? [] : [`${bands[band]?.title ?? band}: ${of[name]}`],
        ),
      ),
      ...section("Beyond it", [`${kind.still}.`]),
      ...changed("up-to-15", name),
    ],
    source: autolysis.source,
  }),
}));

const bandTopics: readonly Topic[] = Object.entries(limits).map(([name, of]) => ({
  kind: "time limit",
  name,
  title: `How long tissue keeps ${bands[name]?.title ?? name}`,
  aliases: [],
  explain: () => ({
    sections: [
      ...section(
        "From death to sampling",
        Object.entries(of).map(([kind, limit]) => `${kinds[kind]?.title ?? kind}: ${limit}`),
      ),
      ...changed(name, "culture"),
    ],
    source: autolysis.source,
  }),
}));

export const timeTopics: readonly Topic[] = [...kindTopics, ...bandTopics];
