// Makes src/schemas/organs.schema.json and src/schemas/vocabulary.schema.json from the knowledge files, so that an
// organ or a word is written down once.
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { schemaFolder } from "./read.mjs";

const draft = "https://json-schema.org/draft/2020-12/schema";
const common = (name) => ({ $ref: `common.schema.json#/$defs/${name}` });
const word = (name) => ({ $ref: `vocabulary.schema.json#/$defs/${name}` });

const write = (name, schema) =>
  writeFileSync(join(schemaFolder, name), `${JSON.stringify(schema, null, 2)}\n`);

const titles = {
  sign: "A sign seen in life",
  process: "What has happened to the tissue",
  distribution: "How the lesion lies in the organ",
  margin: "Border to the tissue around it",
  contour: "Height against the surface",
  shape: "Outline of the lesion",
  colour: "Plain colour, no similes",
  consistency: "How it feels",
  exudate: "What comes out of it or lies on it",
  severity: "Four grades",
  duration: "peracute: hours; acute: up to 3 days; subacute: 3-10 days; chronic: more (from memory)",
  certainty: "How sure you are of it",
};
/** The closed word lists. */
export const wordLists = Object.keys(titles);

/** Word lists as enums, so that an editor offers them; it shows what each word means. */
export function writeVocabularySchema({
  vocabulary,
  agents: { agents },
  diseases,
  disease_criteria: criteria,
}) {
  const $defs = Object.fromEntries(
    Object.entries(titles).map(([name, description]) => [
      name,
      {
        enum: Object.keys(vocabulary[name]),
        description,
        enumDescriptions: Object.values(vocabulary[name]).map(({ means }) => means),
      },
    ]),
  );
  write("vocabulary.schema.json", {
    $schema: draft,
    $id: "vocabulary.schema.json",
    $comment:
      "Made from src/knowledge/vocabulary.yaml, agents.yaml, diseases and criteria by npm run generate",
    title: "Words of the case format",
    $defs: {
      ...$defs,
      test: {
        enum: Object.keys(vocabulary.test),
        description: "A test of the laboratory",
        enumDescriptions: Object.values(vocabulary.test).map(({ means }) => means),
      },
      agent: {
        enum: Object.keys(agents),
        description: "What the laboratory looked for",
        enumDescriptions: Object.values(agents).map(({ name }) => name),
      },
      disease: {
        enum: diseases.map(({ id }) => id),
        description: "A disease by its name in carcase explain",
        enumDescriptions: diseases.map(({ name }) => name),
      },
      criteria: {
        enum: criteria.map(({ disease }) => disease),
        description: "Criteria of the literature, by the disease that they are of",
        enumDescriptions: criteria.map(({ title }) => title),
      },
    },
  });
}

const finding = {
  title: "Finding",
  type: "object",
  additionalProperties: false,
  required: ["process"],
  description: "One lesion, described: what, how it lies, how much. Interpretation belongs under diagnosis",
  properties: {
    process: word("process"),
    side: { ...common("side"), description: "On which side of the pig" },
    site: { ...common("text"), description: "Where in the organ" },
    distribution: word("distribution"),
    extent: { ...common("share"), description: "Share of the organ: 20 %", examples: ["20 %"] },
    size: {
      ...common("size"),
      description: "Size of the lesion or organ: 25 mm, 30 x 20 mm",
      examples: ["25 mm"],
    },
    number: { type: "integer", minimum: 1, description: "How many" },
    colour: word("colour"),
    consistency: word("consistency"),
    exudate: word("exudate"),
    severity: word("severity"),
    duration: word("duration"),
    margin: word("margin"),
    contour: word("contour"),
    shape: word("shape"),
    volume: {
      type: "string",
      pattern: "^\\d+(\\.\\d+)?\\s*(ml|l)$",
      description: "Amount of a fluid: 40 ml",
      examples: ["40 ml"],
    },
    certainty: word("certainty"),
    note: { ...common("text"), description: "What the words above do not say" },
  },
};

const shared = {
  state: { const: "normal", description: "The long form of the one word normal, to add a weight or a note" },
  not_examined: {
    ...common("text"),
    description: "Why it was not examined",
    examples: ["skull left closed"],
  },
  not_assessable: {
    title: "NotAssessable",
    type: "object",
    additionalProperties: false,
    description: "Looked for, but could not be judged",
    properties: {
      because: { enum: ["autolysed", "absent", "damaged", "removed"], description: "What prevents it" },
      why: { ...common("text"), description: "What happened" },
    },
  },
  findings: { $ref: "#/$defs/findings" },
  weight: { ...common("mass"), description: "Weight of the organ: 180 g", examples: ["180 g"] },
  size: { ...common("size"), description: "Size of the organ: 25 mm", examples: ["25 mm"] },
  grades: {
    type: "object",
    description: "Grades read under a scale, by the name of the scale; each feeds that scale alone",
    additionalProperties: { type: "number" },
    examples: [{ "maff-1978": 2 }],
  },
  tracing: { ...common("file"), description: "Outline drawing to measure" },
  photos: { type: "array", items: common("file"), description: "Photographs" },
  note: { ...common("text"), description: "Anything else" },
};

function valueSchema(observation) {
  const [minimum, maximum] = observation.range ?? [];
  switch (observation.kind) {
    case "percent":
      return { type: "number", minimum, maximum };
    case "grade":
      return { type: "number", minimum, maximum };
    case "choice":
      return { enum: observation.values };
    case "choices":
      return {
        anyOf: [
          { enum: observation.values },
          { type: "array", minItems: 1, uniqueItems: true, items: { enum: observation.values } },
        ],
      };
    case "count":
      return { type: "integer", minimum: minimum ?? 0, maximum };
    case "number":
      return { type: "number", minimum, maximum };
    case "length":
      return common("length");
    case "signed-length":
      return {
        type: "string",
        pattern: "^-?\\d+(\\.\\d+)?\\s*(mm|cm)$",
        examples: ["12 mm", "-3 mm"],
      };
    case "measured":
      return measuredSchema(observation);
    default:
      throw new Error(`unknown kind of observation: ${observation.kind}`);
  }
}

/** What was computed from a tracing, beside the tracing and its fingerprint. */
const measuredSchema = ({ figures }) => ({
  type: "object",
  additionalProperties: false,
  properties: {
    tracing: { ...common("file"), description: "The outline drawing that was measured" },
    sha256: {
      type: "string",
      pattern: "^[0-9a-f]{64}$",
      description: "SHA-256 of that drawing when it was measured, in small hexadecimal digits",
    },
    ...Object.fromEntries(Object.entries(figures).map(([key, figure]) => [key, observationSchema(figure)])),
  },
});

function observationSchema(observation) {
  const description = `${observation.title}. ${observation.look}`;
  if (observation.parts === undefined) return { ...valueSchema(observation), description };
  const parts = Object.entries(observation.parts).map(([key, title]) => [
    key,
    { ...valueSchema(observation), description: `${title}` },
  ]);
  return { type: "object", additionalProperties: false, description, properties: Object.fromEntries(parts) };
}

/** The three ways to record an organ: one word, a list of findings, or an entry with more. */
const organForms = (properties) => ({
  anyOf: [
    { const: "normal" },
    { $ref: "#/$defs/findings" },
    { type: "object", additionalProperties: false, properties },
  ],
});

const sharedKeys = (keys) => Object.fromEntries(keys.map((key) => [key, { $ref: `#/$defs/organ_${key}` }]));
const sides = {
  left: { $ref: "#/$defs/side", description: "The left one" },
  right: { $ref: "#/$defs/side", description: "The right one" },
};
const sideKeys = ["state", "not_examined", "not_assessable", "findings", "weight", "size", "note"];

function organSchema(organ) {
  const description = `${organ.title}: ${organ.look}`;
  if (organ.observations === undefined)
    return { $ref: `#/$defs/${organ.form === "paired" ? "paired_organ" : "plain_organ"}`, description };
  const observations = Object.entries(organ.observations).map(([key, o]) => [key, observationSchema(o)]);
  return {
    description,
    ...organForms({
      ...(organ.form === "paired" && sides),
      ...Object.fromEntries(observations),
      ...sharedKeys(Object.keys(shared)),
    }),
  };
}

/** One definition a system: every organ with what can be recorded on it. */
export function writeOrgansSchema(anatomy) {
  const $defs = {
    finding,
    findings: {
      title: "Findings",
      type: "array",
      minItems: 1,
      items: { $ref: "#/$defs/finding" },
      description: "Lesions, one entry each",
    },
    ...Object.fromEntries(Object.entries(shared).map(([key, schema]) => [`organ_${key}`, schema])),
    side: {
      title: "OrganSide",
      description: "One side of a paired organ",
      ...organForms(sharedKeys(sideKeys)),
    },
    plain_organ: organForms(sharedKeys(Object.keys(shared))),
    paired_organ: organForms({
      ...sides,
      ...sharedKeys(Object.keys(shared)),
    }),
    snout_section: { enum: anatomy.systems.respiratory.organs.turbinates.observations.section.values },
    system: { enum: Object.keys(anatomy.systems), description: "A system of organs" },
    system_or_organ: {
      enum: Object.entries(anatomy.systems).flatMap(([id, system]) => [
        id,
        ...Object.keys(system.organs).map((key) => `${id}.${key}`),
      ]),
      description: "A system, or one organ of it",
    },
    rest: {
      description: "All organs of the system that have no entry of their own",
      anyOf: [
        { const: "normal" },
        { type: "object", additionalProperties: false, properties: sharedKeys(["not_examined"]) },
      ],
    },
    organ: {
      title: "OrganEntry",
      description: "What every organ can carry; single organs add sides and observations of their own",
      type: "object",
      additionalProperties: true,
      properties: sharedKeys(Object.keys(shared)),
    },
  };
  for (const [id, system] of Object.entries(anatomy.systems)) {
    $defs[id] = {
      description: `${system.title}: one entry an organ, or the word normal for the whole system`,
      anyOf: [
        { const: "normal" },
        {
          type: "object",
          additionalProperties: false,
          properties: {
            ...Object.fromEntries(Object.entries(system.organs).map(([key, o]) => [key, organSchema(o)])),
            rest: { $ref: "#/$defs/rest" },
          },
        },
      ],
    };
  }
  write("organs.schema.json", {
    $schema: draft,
    $id: "organs.schema.json",
    $comment: "Made from src/knowledge/anatomy.yaml by npm run generate",
    title: "Organs of a case, by system",
    $defs,
  });
}
