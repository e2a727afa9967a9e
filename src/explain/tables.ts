/** The tables of contradictions, row by row: what cannot be, why, and what is written instead. */
import {
  diagnosisLimits,
  type ImpossibleFinding,
  type ImpossibleSample,
  impossibleFindings,
  impossibleInLife,
  impossibleSamples,
  organs,
  type PartCondition,
  partRules,
  type Source,
  sourceLine,
  systemTitle,
} from "../knowledge/index.ts";
import { listing } from "../words/listing.ts";
import { type Section, section, type Topic } from "./explanation.ts";

const nodes = organs.filter(({ key }) => key.endsWith("_nodes")).map(({ id }) => id);

/** Organs and systems as people call them, all lymph nodes as such. */
function placesText(ids: readonly string[]): string {
  const all = nodes.every((id) => ids.includes(id));
  const names = ids
    .filter((id) => !all || !nodes.includes(id))
    .map((id) => (id.split(".")[1] ?? systemTitle(id).toLowerCase()).replaceAll("_", " "));
  return [...(all ? ["lymph nodes"] : []), ...names].join(", ");
}

/** `colour unchanged or white, where the exudate is serous`. */
export function wordsDenied({ with: words = {}, exudates, organs: at }: ImpossibleFinding): string {
  const [[field, denied] = ["", []]] = Object.entries(words) as [string, string[]][];
  const where = exudates === undefined ? "" : `, where the exudate is ${listing(exudates, "or")}`;
  const of = at === undefined ? "" : `, of ${placesText(at)}`;
  return `${field} ${listing(denied, "or")}${where}${of}`;
}

/** `of spleen, in a pig under 3 d or of class stillborn`. */
export function placeDenied({ organs: at, except, classes, under_days: days }: ImpossibleFinding): string {
  const ages = [
    ...(days === undefined ? [] : [`under ${days} d of age`]),
    ...(classes === undefined ? [] : [`of class ${listing(classes, "or")}`]),
  ];
  return [
    at === undefined ? "" : `of ${placesText(at)}`,
    except === undefined ? "" : `of anything but ${placesText(except)}`,
    ages.length === 0 ? "" : `in a pig ${listing(ages, "or")}`,
  ]
    .filter((text) => text !== "")
    .join(", ");
}

interface Row {
  readonly because: string;
  readonly instead?: string | undefined;
  readonly source?: Source | undefined;
}

/** `name: what cannot be. Why. What instead.` */
const line = (name: string, what: string, { because, instead, source }: Row): string =>
  [
    `${name}: ${what}; ${because}.`,
    instead === undefined ? "" : `${instead}.`,
    source === undefined ? "" : `Source: ${sourceLine(source)}.`,
  ]
    .filter((text) => text !== "")
    .join(" ");

const rowsOf = <Entry extends Row>(
  rows: Readonly<Record<string, Entry>>,
  what: (row: Entry) => string,
): string[] => Object.entries(rows).map(([name, row]) => line(name, what(row), row));

const askedBy = (...rules: readonly string[]): Section[] => section("Asked by", [rules.join(", ")]);

/** `keratin at most 0`, `a finding of ulcer`. */
function conditionText({
  read,
  is,
  from,
  above,
  below,
  to,
  all,
  processes,
  exudates,
  site,
}: PartCondition): string {
  if (read === undefined)
    return [
      `a finding of ${listing(processes ?? [], "or")}`,
      exudates === undefined ? "" : ` with exudate ${listing(exudates, "or")}`,
      site === undefined ? "" : ` at a site called ${listing(site, "or")}`,
    ].join("");
  const limits = [
    is === undefined ? "" : listing(is, "or"),
    from === undefined ? "" : `from ${from}`,
    above === undefined ? "" : `above ${above}`,
    below === undefined ? "" : `below ${below}`,
    to === undefined ? "" : to === 0 ? "0" : `up to ${to}`,
  ].filter((text) => text !== "");
  return `${listing([read].flat(), all === true ? "and" : "or")} ${limits.join(" and ")}`;
}

const sampleText = ({ from, except, tests, into, has, says_yes: yes, classes }: ImpossibleSample): string =>
  [
    from === undefined ? "" : `from ${from.join(", ")}`,
    except === undefined ? "" : `from any tissue but ${except.join(", ")}`,
    tests === undefined ? "" : `for ${listing(tests, "or")}`,
    into === undefined ? "" : `into ${listing(into, "or")}`,
    has === undefined ? "" : `with ${has.join(", ")}`,
    yes === undefined ? "" : `with ${yes.join(", ")}: yes`,
    classes === undefined ? "" : `in class ${listing(classes, "or")}`,
  ]
    .filter((text) => text !== "")
    .join(", ");

const topic = (
  name: string,
  title: string,
  aliases: readonly string[],
  source: Source,
  sections: () => Section[],
): Topic => ({
  kind: "contradiction table",
  name,
  title,
  aliases,
  explain: () => ({ sections: sections(), source }),
});

const { longest } = impossibleFindings;

export const tableTopics: readonly Topic[] = [
  topic(
    "impossible-findings",
    "Lesions that cannot be: of this organ, at this age, with this word or this size",
    [],
    impossibleFindings.source,
    () => [
      ...section(
        "Cannot be",
        rowsOf(
          impossibleFindings.rows,
          (row) =>
            `${row.processes.join(", ")} ${row.with === undefined ? placeDenied(row) : `with ${wordsDenied(row)}`}`,
        ),
      ),
      ...section("Longest side of a lesion, mm", [
        `anywhere but in ${longest.not_in.join(", ")}: ${longest.anywhere}, and longer only in class ${listing(longest.long_in, "or")}`,
        ...Object.entries({ ...longest.organs, ...longest.classes, ...longest.observations }).map(
          ([name, mm]) => `${name}: ${mm}`,
        ),
        `Source: ${sourceLine(longest.source)}.`,
      ]),
      ...askedBy("process-impossible", "size-implausible"),
    ],
  ),
  topic(
    "parts-that-disagree",
    "Parts of what was observed on one organ that exclude each other, or add up",
    [],
    partRules.source,
    () => [
      ...section(
        "Exclude each other",
        rowsOf(
          partRules.excludes,
          ({ organ, one, other }) => `${organ}: ${conditionText(one)}, and ${conditionText(other)}`,
        ),
      ),
      ...section("Add up", [
        ...rowsOf(
          partRules.adds_up,
          ({ organ, reads, processes, at_most: most, slack }) =>
            `${organ}: ${listing(reads ?? processes ?? [])} together at most ${most} %, and ${slack} for estimates`,
        ),
        ...Object.entries(partRules.totals).map(
          ([name, { organ, read, slack }]) =>
            `${name}: ${organ}: the total of ${read} lies between left and right, give or take ${slack}.`,
        ),
        ...rowsOf(
          partRules.counts,
          ({ organ, read, processes }) =>
            `${organ}: ${read} below the number in findings of ${listing(processes)}`,
        ),
        ...rowsOf(
          partRules.named,
          ({ organ, read, processes }) =>
            `${organ}: a finding of ${listing(processes, "or")} whose site ${read} does not name`,
        ),
        line(
          "weights",
          `the weight of a paired organ more than ${partRules.weights.slack} % off the sum of its sides`,
          partRules.weights,
        ),
      ]),
      ...askedBy("observation-parts-disagree"),
    ],
  ),
  topic(
    "half-filled-lists",
    "Lists from which no score can be made unless they are whole",
    [],
    partRules.source,
    () => [
      ...section(
        "Must be whole once begun",
        rowsOf(partRules.whole, ({ organ, reads, may_lack: lacks, where }) =>
          [
            `${organ}: ${listing(reads)}`,
            where === undefined ? "" : `, as far as ${conditionText(where)}`,
            ...Object.entries(lacks ?? {}).map(
              ([part, scale]) => `, but for ${part} where the settings name ${scale}`,
            ),
          ].join(""),
        ),
      ),
      ...section(
        "Worth nothing alone",
        rowsOf(
          partRules.together,
          ({ organ, reads, needs }) => `${organ}: ${listing(reads, "or")} without ${needs}`,
        ),
      ),
      ...askedBy("list-half-filled", "lobe-missing", "side-missing", "snout-section-missing"),
    ],
  ),
  topic(
    "diagnosis-limits",
    "How far a diagnosis goes: its findings, its samples, its answers, the age of the pig",
    [],
    diagnosisLimits.source,
    () => [
      ...section(
        "Against every finding of the organ",
        Object.entries(diagnosisLimits.against).map(
          ([name, { field, words, values, microscope }]) =>
            `${name}: ${listing(words, "or")} in the diagnosis, ${field} ${listing(values, "or")} in the findings${microscope === true ? ", unless histology says so" : ""}.`,
        ),
      ),
      ...section(
        "Only at an age",
        rowsOf(diagnosisLimits.ages, ({ words, classes, from_days: from, to_days: to }) =>
          [
            listing(words, "or"),
            classes === undefined ? "" : ` in another class than ${listing(classes, "or")}`,
            from === undefined ? "" : ` before ${from} d of age`,
            to === undefined ? "" : ` after ${to} d of age`,
          ].join(""),
        ),
      ),
      ...section("Only with a test", [
        ...Object.entries(diagnosisLimits.bases).map(
          ([name, { tests }]) =>
            `basis ${name}: a sample ${tests.length === 0 ? "for any test" : `for ${listing(tests, "or")}`}.`,
        ),
        ...Object.values(diagnosisLimits.agents).map(
          ({ title, words, tests }) => `${title} (${words.join(", ")}): ${listing(tests, "or")}.`,
        ),
      ]),
      ...section(
        "Not after a negative answer",
        Object.values(diagnosisLimits.negative).map(({ test, words }) => `${test}: ${listing(words, "or")}.`),
      ),
      ...askedBy("diagnosis-against-finding", "diagnosis-beyond-basis"),
    ],
  ),
  topic(
    "impossible-samples",
    "Samples that hold no answer to their test, or do not go into their container",
    [],
    impossibleSamples.source,
    () => [
      ...section("Cannot be", rowsOf(impossibleSamples.rows, sampleText)),
      ...askedBy("test-impossible"),
    ],
  ),
  topic(
    "impossible-in-life",
    "Signs, measures and observations that a pig of this age or sex cannot have",
    [],
    impossibleInLife.source,
    () => [
      ...section(
        "Signs",
        rowsOf(impossibleInLife.signs, ({ signs, classes, sexes, unless }) =>
          [
            `${signs.join(", ")} in class ${listing(classes, "or")}`,
            sexes === undefined ? "" : `, ${listing(sexes, "or")}`,
            unless === undefined ? "" : `, unless beside ${listing(unless, "or")}`,
          ].join(""),
        ),
      ),
      ...section(
        "Measures",
        rowsOf(
          impossibleInLife.facts,
          ({ fact, classes }) => `pig.${fact} in class ${listing(classes, "or")}`,
        ),
      ),
      ...section(
        "Observations",
        rowsOf(
          impossibleInLife.observations,
          ({ organ, read, is, above, classes, under_days: days }) =>
            `${organ}.${read} ${is === undefined ? `above ${above}` : listing(is, "or")} in class ${listing(classes, "or")}${days === undefined ? "" : `, or under ${days} d of age`}`,
        ),
      ),
      ...askedBy("sign-impossible", "observation-impossible"),
    ],
  ),
];
