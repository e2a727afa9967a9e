/** What each word of the closed lists means, and how it differs from words that it is easily taken for. */
import { type Definition, definitions } from "../knowledge/definitions.ts";
import { description, familiesOfSign, impossibleFindings, organs, sourceLine } from "../knowledge/index.ts";
import { capital, listing } from "../words/listing.ts";
import { kindGroups, type Section, section, type Topic, yamlSection } from "./explanation.ts";
import { placeDenied, wordsDenied } from "./tables.ts";

const { sign, record, term, differ } = definitions;

type FindingKey = keyof (typeof kindGroups)["Findings"];
/** The keys of a finding that take a word. */
const ofFinding = Object.keys(kindGroups.Findings) as FindingKey[];

type Words = Readonly<Record<string, Definition>>;

/** @param more what the lists of the project say of a word, after what it means */
const topicsOf = (kind: Topic["kind"], words: Words, more: (name: string) => Section[]): Topic[] =>
  Object.entries(words).map(([name, { means, also = [], de = [], es = [], short = [], write, source }]) => ({
    kind,
    name,
    title: means,
    aliases: [...also, ...de, ...es, ...short],
    explain: () => ({
      sections: [
        ...section("Easily taken for", mixedUp(name, source.cite)),
        ...more(name),
        ...yamlSection("Write", write),
      ],
      source,
    }),
  }));

/** How it differs from other words; the source is added where it is not that of the definition. */
const mixedUp = (name: string, cite: string): string[] =>
  differ
    .filter(({ words }) => words.includes(name))
    .map(({ words, how, source }) => {
      const others = words.filter((word) => word !== name);
      return `${others.join(", ")}: ${how}${source.cite === cite ? "" : ` Source: ${sourceLine(source)}.`}`;
    });

const finding = (kind: FindingKey): Topic[] =>
  topicsOf(kind, definitions[kind], (name) => [
    ...(kind === "process" ? processSections(name) : []),
    ...yamlSection("Write", `${kind}: ${name}`),
  ]);

/** What else is asked of a finding with this process, and what cannot be true of it. */
function processSections(process: string): Section[] {
  const { how_much = [], needs = [], distribution } = description.processes[process] ?? {};
  const rows = Object.values(impossibleFindings.rows).filter(({ processes }) => processes.includes(process));
  return [
    ...section("How much", [
      how_much.length === 0
        ? "Nobody asks how much."
        : `${capital(listing([...new Set([...how_much, "severity"])], "or"))}: one of them is enough.`,
      ...(distribution === "no" ? ["How it lies in the organ is not asked."] : []),
    ]),
    ...section("Say as well", needs.length === 0 ? [] : [`${listing(needs.map((key) => `the ${key}`))}.`]),
    ...section(
      "Does not go with",
      rows.filter((row) => row.with !== undefined).map((row) => `${wordsDenied(row)}: ${row.because}.`),
    ),
    ...section(
      "Cannot be",
      rows.filter((row) => row.with === undefined).map((row) => `${placeDenied(row)}: ${row.because}.`),
    ),
  ];
}

function signSections(name: string): Section[] {
  const families = familiesOfSign(name);
  const due = organs.filter(({ definition }) =>
    definition.when?.some(({ signs = [] }) => signs.some((one) => families.includes(one))),
  );
  return [
    ...section("Sign families", [`${families.join(", ")}.`]),
    ...section(
      "Makes due, where they are not anyway",
      due.length === 0 ? [] : [`${due.map(({ id }) => id).join(", ")}.`],
    ),
    ...yamlSection("Write", `signs: [${name}]`),
  ];
}

export const wordTopics: readonly Topic[] = [
  ...topicsOf("sign", sign, signSections),
  ...ofFinding.flatMap(finding),
  ...topicsOf("record word", record, () => []),
  ...topicsOf("term", term, (name) =>
    section(null, [
      term[name]?.write === undefined
        ? "No case takes this word."
        : "No case takes this word; what is written stands below.",
    ]),
  ),
];
