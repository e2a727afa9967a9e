/** Diseases: every statement with who says so; and by what rule the work-up puts them in order. */
import { type Disease, diseaseCriteria, diseases, type Statement } from "../knowledge/diseases.ts";
import { type Source, sourceLine } from "../knowledge/index.ts";
import { listing } from "../words/listing.ts";
import { orderRule, outbreaksOf } from "../workup/index.ts";
import { section, type Topic } from "./explanation.ts";

export const diseaseTopics: readonly Topic[] = [...diseases.values()].map((disease) => ({
  kind: "disease",
  name: disease.id,
  title: disease.name,
  aliases: [disease.name, ...(disease.also ?? [])],
  explain: () => ({ sections: sectionsOf(disease), source: null }),
}));

export const orderTopics: readonly Topic[] = [
  {
    kind: "order of diseases",
    name: "workup",
    title: "By what rule carcase workup puts diseases in order",
    aliases: ["work-up", "differential", "differentials"],
    explain: () => ({
      sections: [
        ...section(null, orderRule),
        ...section(
          "Strengths",
          Object.values(strengths).map(({ head, means }) => `${head}: ${means}.`),
        ),
      ],
      source: { cite: "this project's own choice", confidence: "common-practice" },
    }),
  },
];

const strengths: Readonly<Record<Statement["strength"], { readonly head: string; readonly means: string }>> =
  {
    hallmark: { head: "Hallmark", means: "nearly certain before the laboratory" },
    typical: { head: "Typical", means: "the core of the picture, without which one would not think of it" },
    supports: { head: "Supports", means: "fits, and helps" },
    against: { head: "Against", means: "speaks against it" },
    excludes: { head: "Excludes", means: "cannot be; where it is from memory it only speaks against" },
  };

function sectionsOf(disease: Disease) {
  const sources: Source[] = [];
  /** `[2]`, or `[from memory]`: who says so, below. */
  const by = (source: Source): string => {
    if (source.confidence === "from-memory") return "[from memory]";
    const known = sources.findIndex(({ cite, note }) => cite === source.cite && note === source.note);
    return `[${known < 0 ? sources.push(source) : known + 1}]`;
  };
  const { also, kind, ages, notifiable, note, alarms, people, statements, disagree = [] } = disease;
  const positive = disease.positive_alone;
  const criteria = diseaseCriteria.filter((one) => one.disease === disease.id);
  const nameOf = (id: string): string => diseases.get(id)?.name ?? id;
  const body = [
    ...section(null, [
      ...(also === undefined ? [] : [`Also called: ${listing(also)}.`]),
      `Kind: ${kind}.`,
      `Ages: usual in ${listing(ages.usual, "or")}${ages.seldom === undefined || ages.seldom.length === 0 ? "" : `, seldom in ${listing(ages.seldom, "or")}`} ${by(ages.source)}`,
      `Occurrence: ${disease.occurrence.is} ${by(disease.occurrence.source)}`,
      ...(disease.form_of === undefined ? [] : [`A form of ${nameOf(disease.form_of)}.`]),
      ...(notifiable === "no" ? [] : [notifiableWords[notifiable]]),
      ...(alarms.length === 0 ? [] : [`Alarms that look for it: ${listing(alarms)}.`]),
      ...(people === "no" ? [] : [`People: ${people}`]),
      ...(note === undefined ? [] : [note]),
    ]),
    ...Object.entries(strengths).flatMap(([strength, { head, means }]) =>
      section(
        `${head} (${means})`,
        statements
          .filter((one) => one.strength === strength)
          .map(
            ({ says, source, when }) =>
              `${says}${when === undefined ? " (not looked for)" : ""} ${by(source)}`,
          ),
      ),
    ),
    ...section(
      "Confirmed by",
      disease.confirm.map(
        ({ test, sample, into, says, source }) =>
          `${test} of ${some(sample)}${into === undefined ? "" : `, ${into}`}: ${says} ${by(source)}`,
      ),
    ),
    ...section(
      "A positive test alone",
      positive === undefined ? [] : [`${positive.says} ${by(positive.source)}`],
    ),
    ...section(
      "Told apart from",
      disease.confused_with.map(({ disease: id, apart, source }) => `${nameOf(id)}: ${apart} ${by(source)}`),
    ),
    ...section(
      "Often together with",
      (disease.goes_with ?? []).map(
        ({ disease: id, says, source }) =>
          `${nameOf(id)}${says === undefined ? "" : `: ${says}`} ${by(source)}`,
      ),
    ),
    ...section(
      "Where authorities disagree",
      disagree.map(({ says, and, source }) => `${says}; but: ${and} ${by(source)}`),
    ),
    ...criteria.flatMap(({ title, needs, criteria: all, source, note: mind }) =>
      section(`Criteria: ${title} ${by(source)}`, [
        ...all.map(({ says, test }) => `${says}${test === undefined ? "" : ` (${test})`}`),
        `${needs} of ${all.length} are needed.${mind === undefined ? "" : ` ${mind}.`}`,
      ]),
    ),
  ];
  return [
    ...body,
    ...section(
      "Published outbreaks and cases that the work-up counts",
      outbreaksOf(disease.id).map(({ cite }) => cite),
    ),
    ...section(
      "Sources",
      sources.map((source, index) => `[${index + 1}] ${sourceLine(source)}`),
    ),
  ];
}

const notifiableWords = {
  listed: "Notifiable: it is listed internationally.",
  "some-countries": "Notifiable in some countries.",
} as const;

const most = 4;

const some = (names: readonly string[]): string =>
  names.length > most
    ? `${names.slice(0, most - 1).join(", ")} and ${names.length - most + 1} more`
    : names.join(", ");
