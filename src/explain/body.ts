/** Protocols, systems and organs: what is due, and what to look at. */
import {
  anatomySource,
  type Observation,
  organs,
  type PlacedOrgan,
  protocols,
  systems,
} from "../knowledge/index.ts";
import { listing } from "../words/listing.ts";
import { section, type Topic } from "./explanation.ts";
import { stepOf } from "./knife.ts";

export const protocolTopics: readonly Topic[] = [...protocols.values()].map((protocol) => ({
  kind: "protocol",
  name: protocol.id,
  title: protocol.title,
  aliases: [],
  explain: () => ({
    sections: [
      ...section(null, [`${protocol.purpose}.`.replace(/\.\.$/, ".")]),
      ...section("Due", [
        ...protocol.due.map((part) =>
          part === "base" ? "base: the organs of the base set for the pig's age class" : part,
        ),
        ...(protocol.wanted === undefined ? [] : [`Wanted, and no error: ${listing(protocol.wanted)}.`]),
        protocol.follow_signs
          ? "Signs in life make further organs due."
          : "Signs in life make no further organ due.",
      ]),
      ...section("Also asked for", [
        `observations on the organs: ${protocol.observations}`,
        `facts of the case: ${protocol.facts.join(", ")}`,
      ]),
    ],
    source: protocol.source,
  }),
}));

export const systemTopics: readonly Topic[] = systems.map(({ id, title }) => ({
  kind: "system",
  name: id,
  title,
  aliases: [title],
  explain: () => ({
    sections: section(
      "Organs",
      organs.filter(({ system }) => system === id).map((organ) => `${organ.id}: ${organ.definition.title}`),
    ),
    source: anatomySource,
  }),
}));

export const organTopics: readonly Topic[] = organs.map((organ) => ({
  kind: "organ",
  name: organ.id,
  title: organ.definition.title,
  aliases: [
    organ.key,
    organ.definition.title,
    ...Object.values(organ.definition.names ?? {}).flat(),
    ...observationWords(organ),
  ],
  explain: () => ({
    sections: [
      ...section(null, [organ.definition.where]),
      ...section("Look at", [organ.definition.look]),
      ...section("When it is due", due(organ)),
      ...section("In the order of the knife", stepLines(organ)),
      ...Object.entries(organ.definition.observations ?? {}).flatMap(([key, observation]) =>
        section(`Observation ${key}`, observed(observation)),
      ),
    ],
    source: anatomySource,
  }),
}));

/** Words of the observations of an organ: parts with and without their side, choices. */
function observationWords({ definition }: PlacedOrgan): string[] {
  const words = Object.values(definition.observations ?? {}).flatMap(({ values = [], parts = {} }) => [
    ...values.map(String),
    ...Object.values(parts).flatMap((part) => [part, part.replace(/^(?:left|right) /i, "")]),
  ]);
  return [...new Set(words)];
}

function stepLines(organ: PlacedOrgan): string[] {
  const step = stepOf(organ);
  return step === undefined ? [] : [`${step.id}: ${step.title}.`];
}

function due({ id, definition }: PlacedOrgan): string[] {
  const { base, wanted = [], exists, sex, when, form, forgotten } = definition;
  const named = [...protocols.values()].filter(
    (protocol) => protocol.due.includes(id) || protocol.due.includes(id.split(".")[0] ?? id),
  );
  return [
    ...(base.length === 0 ? [] : [`A must in the base set of: ${base.join(", ")}.`]),
    ...(wanted.length === 0 ? [] : [`Wanted in the base set of: ${wanted.join(", ")}.`]),
    ...(base.length + wanted.length === 0 ? ["It is not in the base set of any age class."] : []),
    ...(named.length === 0 ? [] : [`Named by the protocols: ${named.map((one) => one.id).join(", ")}.`]),
    ...(when === undefined
      ? []
      : when.map(
          ({ signs = [], manners = [], classes, level = "a must" }) =>
            `Also ${level} where the signs or the manner of death are: ${[...signs, ...manners].join(", ")}${classes === undefined ? "" : ` (${classes.join(", ")})`}.`,
        )),
    ...(exists === undefined ? [] : [`Only there in: ${exists.join(", ")}.`]),
    ...(sex === undefined ? [] : [`Only there in: ${sex.join(", ")}.`]),
    ...(form === "paired" ? ["Left and right may be recorded apart."] : []),
    ...(forgotten === true ? ["Often forgotten."] : []),
  ];
}

function observed(observation: Observation): string[] {
  const { title, look, parts, required, required_in: where, asked_by: lesions } = observation;
  const of = where === undefined ? "" : ` in: ${where.join(", ")}`;
  return [
    `${title}: ${look}`,
    ...written(observation),
    ...(parts === undefined ? [] : [`Parts: ${Object.keys(parts).join(", ")}.`]),
    ...(required === "always" ? [`It may not be left out${of}.`] : []),
    ...(required === "unless-normal" ? [`Unless the organ is normal, it may not be left out${of}.`] : []),
    ...(lesions === undefined
      ? []
      : [`Where lesions are described, it is asked for beside: ${lesions.join(", ")}.`]),
  ];
}

function written({ kind, range, values, figures = {} }: Observation): string[] {
  switch (kind) {
    case "length":
      return ["Write a length in mm or cm, such as 12 mm."];
    case "signed-length":
      return ["Write a length in mm or cm, such as 12 mm or -3 mm."];
    case "measured":
      return [
        "carcase measure --write writes it.",
        ...Object.entries(figures).map(([key, figure]) => `${key}: ${figure.title}. ${figure.look}.`),
      ];
    default: {
      const unit = kind === "percent" ? "per cent" : kind;
      return [
        `Write ${range === undefined ? (values ?? ["a number"]).join(", ") : `${range[0]} to ${range[1]} (${unit})`}.`,
      ];
    }
  }
}
