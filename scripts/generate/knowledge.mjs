// Checks every knowledge file against its schema and writes each as a TypeScript module.
import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { messageGaps } from "./message-gaps.mjs";
import { generatedFolder } from "./read.mjs";
import { wordLists } from "./schemas.mjs";
import { schemaCompiler } from "./validators.mjs";

/** @param knowledge parsed knowledge by schema definition: one value, or a list for folders of files */
export function writeKnowledge(knowledge) {
  const ajv = schemaCompiler();
  const faults = [];
  for (const [name, value] of Object.entries(knowledge)) {
    const singular = {
      protocols: "protocol",
      scales: "scale",
      alarms: "alarm",
      diseases: "disease",
      disease_criteria: "disease_criteria",
      messages: "message",
      sample_sets: "sample_set",
    }[name];
    const values = singular === undefined ? [value] : value;
    const check = ajv.getSchema(`knowledge.schema.json#/$defs/${singular ?? name}`);
    for (const item of values) {
      if (check(item)) continue;
      for (const e of check.errors)
        faults.push(`${name} ${item.id ?? ""} ${e.instancePath} ${e.message} ${JSON.stringify(e.params)}`);
    }
  }
  faults.push(
    ...vocabularyFaults(knowledge.vocabulary),
    ...agentFaults(knowledge.agents),
    ...setFaults(knowledge),
  );
  if (faults.length > 0) throw new Error(`knowledge files do not match their schema:\n${faults.join("\n")}`);
  const types = {
    anatomy: "Anatomy",
    age_classes: "AgeClasses",
    growth: "Growth",
    description: "Description",
    plausible: "Plausible",
    impossible_findings: "ImpossibleFindings",
    impossible_samples: "ImpossibleSamples",
    impossible_in_life: "ImpossibleInLife",
    parts: "Parts",
    diagnosis_limits: "DiagnosisLimits",
    death_methods: "DeathMethods",
    selection_rules: "SelectionRules",
    choosing_pigs: "ChoosingPigs",
    comparability: "Comparability",
    published_agreement: "PublishedAgreements",
    intervals: "Intervals",
    denial_words: "DenialWords",
    interpretation_words: "InterpretationWords",
    slip_words: "SlipWords",
    selection_bases: "SelectionBases",
    facts: "Facts",
    protocols: "Protocol[]",
    scales: "Scale[]",
    indicators: "Indicators",
    clinical_predictors: "ClinicalPredictors",
    alarms: "AlarmPattern[]",
    diseases: "Disease[]",
    disease_criteria: "DiseaseCriteria[]",
    published_outbreaks: "PublishedOutbreaks",
    transport: "Transport",
    protection: "Protection",
    autolysis: "Autolysis",
    sample_rules: "SampleRules",
    sample_sets: "SampleSet[]",
    sample_care: "SampleCare",
    agents: "Agents",
    label_sheets: "LabelSheets",
    morphometry: "Morphometry",
    snout_reading: "SnoutReadingRules",
    alarm_signs: "AlarmSigns",
    knife: "Knife",
  };
  // A module each: a command that does not ask for one of them does not load it.
  const folder = join(generatedFolder, "knowledge");
  mkdirSync(folder, { recursive: true });
  const note = "// Made from src/knowledge/*.yaml by npm run generate. Not edited by hand.";
  for (const [name, type] of Object.entries(types)) {
    const value = name === "slip_words" ? withOtherNames(knowledge) : knowledge[name];
    const text = JSON.stringify(JSON.stringify(value));
    writeFileSync(
      join(folder, `${name}.ts`),
      `${note}
import type { ${type.replace("[]", "")} } from "../knowledge.types.ts";
export const ${name}: ${type} = JSON.parse(${text});
`,
    );
  }
  // Linting needs the words, and explaining alone what they mean.
  writeFileSync(
    join(folder, "definitions.ts"),
    `${note}
import type { Vocabulary } from "../knowledge.types.ts";
export const definitions: Vocabulary = JSON.parse(${JSON.stringify(JSON.stringify(knowledge.vocabulary))});
`,
  );
  writeFileSync(
    join(folder, "vocabulary.ts"),
    `${note}
import type { Vocabulary } from "../knowledge.types.ts";
/** The closed word lists, and the families of signs. */
export const vocabulary: Pick<Vocabulary, "signs"> & Readonly<Record<${wordLists.map((name) => `"${name}"`).join(" | ")}, readonly string[]>> = ${JSON.stringify(listsOf(knowledge.vocabulary))};
`,
  );
  writeFileSync(
    join(folder, "recorded_grades.ts"),
    `${note}
/** By organ, the scales under whose name a grade may be written down on the spot. */
export const recorded_grades: Readonly<Record<string, readonly string[]>> = ${JSON.stringify(recordedGrades(knowledge.scales))};
`,
  );
  const union = (names) => names.map((name) => JSON.stringify(name)).join(" | ");
  const messages = Object.fromEntries(knowledge.messages.map((one) => [one.id, one]));
  writeFileSync(
    join(folder, "messages.ts"),
    `${note}
import type { Messages } from "../knowledge.types.ts";
import type { Language } from "./languages.ts";
export type { Language };
export type MessageKey = ${union(Object.keys(messages.en.say))};
export const messages: Readonly<Record<Language, Messages & { readonly say: Readonly<Record<MessageKey, string>> }>> = JSON.parse(${JSON.stringify(JSON.stringify(messages))});
/** What each message of a report needs: \`Date\` is a day as records write it. */
export interface ReportValues {
${Object.entries(messages.en.report)
  .map(([key, text]) => `  ${key}: ${gapsType(text)};`)
  .join("\n")}
}
`,
  );
  writeFileSync(
    join(folder, "languages.ts"),
    `${note}
/** The languages of sheets and reports: those that have a file of messages. */
export const languages = ${JSON.stringify(Object.keys(messages))} as const;
export type Language = (typeof languages)[number];
`,
  );
  const ranges = knowledge.scales.map(({ id, organ, range, whole, parts }) => [
    id,
    { id, organ, range, ...(whole && { whole }), ...(isComputed(id, parts) && { computed: true }) },
  ]);
  writeFileSync(
    join(folder, "scale_ranges.ts"),
    `${note}
import type { Scale } from "../knowledge.types.ts";
/** What the scales that ship grade, by name; \`computed\`: from parts, not from a grade of the whole. */
export const scale_ranges: Readonly<Record<string, Pick<Scale, "id" | "organ" | "range" | "whole"> & { readonly computed?: true }>> = ${JSON.stringify(Object.fromEntries(ranges))};
`,
  );
  const lines = [
    // Scales, diseases, the order of the knife, the agents and sheets of labels are loaded by those who ask for them.
    ...Object.keys(types).filter(
      (name) =>
        ![
          "scales",
          "diseases",
          "disease_criteria",
          "published_outbreaks",
          "knife",
          "agents",
          "label_sheets",
        ].includes(name),
    ),
    "vocabulary",
    "recorded_grades",
    "scale_ranges",
  ].map((name) => `export { ${name} } from "./knowledge/${name}.ts";`);
  writeFileSync(join(generatedFolder, "knowledge.ts"), `${note}\n${lines.join("\n")}\n`);
}

/** The gaps of a message in ICU syntax, as a type. */
function gapsType(text) {
  const gaps = Object.entries(messageGaps(text)).map(([name, kind]) => `readonly ${name}: ${kind}`);
  return gaps.length === 0 ? "Record<never, never>" : `{ ${gaps.join("; ")} }`;
}

const isComputed = (id, parts) => Object.values(parts).every(({ read }) => read !== `grades.${id}`);

function recordedGrades(scales) {
  const grades = {};
  for (const { id, organ } of scales) grades[organ] = [...(grades[organ] ?? []), id];
  return grades;
}

/** What people write in place of a word of the format: the words of slip-words.yaml, and the other names of the vocabulary. */
function withOtherNames({ slip_words: slips, vocabulary }) {
  const words = { ...slips.words };
  for (const list of wordLists)
    for (const [word, { also = [], de = [], es = [], short = [] }] of Object.entries(vocabulary[list])) {
      const names = [...also, ...de, ...es, ...short].map((name) => name.toLowerCase().replaceAll("-", " "));
      if (names.length > 0) words[word] = [...new Set([...(words[word] ?? []), ...names])];
    }
  return { ...slips, words };
}

const listsOf = (vocabulary) => ({
  signs: vocabulary.signs,
  ...Object.fromEntries(wordLists.map((name) => [name, Object.keys(vocabulary[name])])),
});

/** What no schema can say: every sign has a family, and no word is told apart that has no definition. */
function vocabularyFaults({ signs, sign, differ, ...lists }) {
  const inFamily = new Set(Object.values(signs).flatMap(({ words }) => words));
  const defined = new Set([sign, ...Object.values(lists)].flatMap((words) => Object.keys(words)));
  return [
    ...[...inFamily]
      .filter((word) => !(word in sign))
      .map((word) => `vocabulary: the sign ${word} is not defined`),
    ...Object.keys(sign)
      .filter((word) => !inFamily.has(word))
      .map((word) => `vocabulary: no family has the sign ${word}`),
    ...differ
      .flatMap(({ words }) => words)
      .filter((word) => !defined.has(word))
      .map((word) => `vocabulary: ${word} is told apart and not defined`),
  ];
}

/** What no schema can say: a wider agent exists, and no name leads to two agents. */
function agentFaults({ agents }) {
  const names = new Map();
  const faults = [];
  for (const [id, { name, of, short = [] }] of Object.entries(agents)) {
    if (of !== undefined && agents[of] === undefined)
      faults.push(`agents: ${id} is of ${of}, which there is not`);
    for (const text of new Set([id, name, ...short].map((one) => one.toLowerCase()))) {
      if (names.has(text)) faults.push(`agents: ${text} leads to ${names.get(text)} and to ${id}`);
      names.set(text, id);
    }
  }
  return faults;
}

/** What no schema can say: each sample of a set has its moment in the order of the knife, and no moment is of no set. */
function setFaults({ knife, sample_sets: sets }) {
  const key = ({ from }, into) => `${from} into ${into}`;
  const moments = new Set(
    Object.values(knife.steps).flatMap(({ samples }) =>
      samples.flatMap((sample) => sample.into.map((into) => key(sample, into))),
    ),
  );
  const taken = new Set(sets.flatMap(({ samples }) => samples.map((sample) => key(sample, sample.into))));
  return [
    ...[...taken]
      .filter((one) => !moments.has(one))
      .map((one) => `sample sets: ${one} has no moment in knife.yaml`),
    ...[...moments].filter((one) => !taken.has(one)).map((one) => `knife: no set takes ${one}`),
  ];
}
