/** What fits the schema of a scale file and still means nothing: organs, observations and names that do not exist, limits that fall. */
import { vocabulary } from "../../generated/knowledge.ts";
import {
  type ClassLimit,
  type Observation,
  organById,
  organs,
  type Scale,
  scaleIds,
} from "../../knowledge/index.ts";
import { nearest } from "../../words/nearest.ts";
import { formatPath, type Path } from "../model/path.ts";
import { allShipped, type SettingsFault, unknownName } from "./settings-faults.ts";

/** Keys that every organ has beside its observations. */
const everyOrgan = ["weight", "size"];

/** The name of the whole pig where a scale names its organ. */
const wholePig = "pig";

/** All faults of a scale file that fits its schema. @param others names of the practice's other scales */
export function scaleFaults(scale: Scale, others: readonly string[]): SettingsFault[] {
  return [
    ...clash(scale.id, others),
    ...languageWord(["id"], scale.id),
    ...rangeFaults(scale),
    ...summaryFaults(scale),
    ...organFaults(scale),
    ...limitFaults(["steps"], scale.steps),
    ...limitFaults(["total_steps"], scale.total_steps),
    ...Object.entries(scale.parts).flatMap(([name, { steps }]) =>
      limitFaults(["parts", name, "steps"], steps),
    ),
    ...limitFaults(["classes"], scale.classes),
    ...(scale.indices ?? []).flatMap(({ classes }, index) =>
      limitFaults(["indices", index, "classes"], classes),
    ),
    ...(scale.classes !== undefined && scale.class_source === undefined
      ? fault(["classes"], "who made these classes? Write class_source: {cite: …, confidence: …}.")
      : []),
    ...(Object.keys(scale.parts).length === 0 ? fault(["parts"], "a scale has one part at least.") : []),
    ...(scale.not_comparable ?? []).flatMap((id, index) =>
      [...scaleIds, ...others].includes(id)
        ? []
        : fault(["not_comparable", index], unknownName(id, [...scaleIds, ...others], "scale")),
    ),
    ...[scale.shows, ...Object.values(scale.parts).map(({ shows }) => shows)].flatMap((shows) =>
      (shows?.process ?? [])
        .filter((word) => !vocabulary.process.includes(word))
        .flatMap((word) => fault(["shows"], unknownName(word, vocabulary.process, "process"))),
    ),
  ];
}

const fault = (path: Path, message: string): SettingsFault[] => [
  { path, message: `${formatPath(path)}: ${message}` },
];

/** `constructor` and its like mean something in every object of the program, and a name must not. */
const languageWord = (path: Path, id: string): SettingsFault[] =>
  id in {}
    ? fault(path, `"${id}" is a word of the program's own language; give it another name, such as our-${id}.`)
    : [];

function rangeFaults({ range: [lowest, highest], marks }: Scale): SettingsFault[] {
  if (lowest === highest)
    return fault(["range"], `it begins and ends at ${lowest}; write the lowest and the highest score.`);
  if (lowest > highest)
    return fault(
      ["range"],
      `${lowest} is more than ${highest}; write the lowest score first: range: [${highest}, ${lowest}].`,
    );
  const { healthy, worst } = marks ?? {};
  return worst !== undefined && (healthy === undefined || healthy === worst)
    ? fault(["marks"], "worst is told by its distance from healthy; write both, and not the same.")
    : [];
}

/** Which figures of a herd make sense. */
const summaryFaults = ({ nominal, indices = [] }: Scale): SettingsFault[] =>
  indices.flatMap(({ id, statistic }, index) => [
    ...languageWord(["indices", index, "id"], id),
    ...(nominal && statistic !== "share"
      ? fault(
          ["indices", index, "statistic"],
          "the grades of a nominal scale are names, so that only a share of pigs makes sense; write share, or take out nominal.",
        )
      : []),
  ]);

function clash(id: string, others: readonly string[]): SettingsFault[] {
  if (id === allShipped)
    return fault(["id"], `"${id}" is a word of the settings; give the scale another name.`);
  if (scaleIds.includes(id))
    return fault(
      ["id"],
      `"${id}" is the name of a scale that ships, and two scales under one name would be mixed. Give yours a name of its own, such as our-${id}.`,
    );
  return others.includes(id)
    ? fault(
        ["id"],
        `another of your scale files has the name "${id}" already; give each scale a name of its own.`,
      )
    : [];
}

function organFaults(scale: Scale): SettingsFault[] {
  const { organ: place, parts, requires } = scale;
  if (place !== wholePig && organById(place) === undefined) {
    const ids = organs.map((one) => one.id);
    const guess = nearest(place, ids) ?? ids.find((one) => one.endsWith(`.${place}`));
    const help =
      guess === undefined ? "Write it as system.organ, such as respiratory.lungs." : `Did you mean ${guess}?`;
    return fault(["organ"], `there is no organ "${place}". ${help}`);
  }
  return [
    ...Object.entries(parts).flatMap(([name, { read, zero_if_zero: zero, zero_unless: unless }]) => [
      ...readFaults(scale, ["parts", name, "read"], read),
      ...(zero === undefined ? [] : readFaults(scale, ["parts", name, "zero_if_zero"], zero)),
      ...(unless === undefined ? [] : readFaults(scale, ["parts", name, "zero_unless", "read"], unless.read)),
    ]),
    ...Object.entries(requires ?? {}).flatMap(([read, words]) => {
      const unknown = readFaults(scale, ["requires", read], read);
      return unknown.length > 0 ? unknown : wordFaults(scale, ["requires", read], read, words);
    }),
  ];
}

/** What is read must be an observation of the organ, down to its part. */
function readFaults({ id, organ }: Scale, path: Path, read: string): SettingsFault[] {
  const [key = "", ...deeper] = read.split(".");
  if (key === "grades")
    return read === `grades.${id}`
      ? []
      : fault(path, `a scale reads no grade but its own; write read: grades.${id}.`);
  const observations = organById(organ)?.definition.observations;
  // What is recorded of the whole pig is no list of observations.
  if (observations === undefined ? organ === wholePig : everyOrgan.includes(key)) return [];
  const observation = observations?.[key];
  if (observation === undefined)
    return fault(
      path,
      unknownName(read, [...Object.keys(observations ?? {}), `grades.${id}`], `observation of ${organ}`),
    );
  const names = namesBelow(observation);
  const given = deeper.join(".");
  if (names.length === 0 ? given === "" : names.includes(given)) return [];
  return given === ""
    ? fault(path, `${key} has parts; name one, such as ${key}.${names[0]}.`)
    : fault(path, unknownName(given, names, `part of ${key}`));
}

/** What is required must be a word that the observation can be. */
function wordFaults(
  { organ }: Scale,
  path: Path,
  read: string,
  required: readonly string[],
): SettingsFault[] {
  const observation = organById(organ)?.definition.observations?.[read.split(".")[0] ?? ""];
  const words = observation?.values;
  if (words === undefined) return [];
  return required.flatMap((word, index) =>
    words.includes(word) ? [] : fault([...path, index], unknownName(word, words, `word of ${read}`)),
  );
}

/** Parts of an observation, or figures of a measurement with their parts. */
const namesBelow = ({ parts = {}, figures = {} }: Observation): string[] => [
  ...Object.keys(parts),
  ...Object.entries(figures).flatMap(([figure, { parts: inside }]) =>
    inside === undefined ? [figure] : Object.keys(inside).map((part) => `${figure}.${part}`),
  ),
];

/** Each limit says from or above, and none lies below the one before it. */
function limitFaults(
  path: Path,
  limits: readonly Pick<ClassLimit, "from" | "above">[] = [],
): SettingsFault[] {
  let before = Number.NEGATIVE_INFINITY;
  return limits.flatMap(({ from, above }, index) => {
    const at = [...path, index];
    if ((from === undefined) === (above === undefined))
      return fault(at, "write either from (the limit itself included) or above (left out).");
    const limit = from ?? above ?? before;
    const falls = limit < before;
    before = limit;
    return falls
      ? fault(at, "it lies below the one before it; write limits from the lowest to the highest.")
      : [];
  });
}
