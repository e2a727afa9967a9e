// TypeScript types from the schemas, so that the two cannot drift.
import { readdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { compile } from "json-schema-to-typescript";
import { generatedFolder, readSchema, schemaFolder } from "./read.mjs";

const options = {
  cwd: `${schemaFolder}/`,
  bannerComment: "/* Made from the schemas by npm run generate. Not edited by hand. */",
  additionalProperties: false,
  declareExternallyReferenced: true,
  unreachableDefinitions: false,
  format: false,
};

/** Every definition of the knowledge schema as a property of one root, so that each gets its named type. */
function knowledgeRoot() {
  const schema = readSchema("knowledge.schema.json");
  const tops = [
    "anatomy",
    "vocabulary",
    "age_classes",
    "growth",
    "description",
    "plausible",
    "impossible_findings",
    "impossible_samples",
    "impossible_in_life",
    "parts",
    "diagnosis_limits",
    "death_methods",
    "selection_rules",
    "choosing_pigs",
    "comparability",
    "published_agreement",
    "intervals",
    "denial_words",
    "interpretation_words",
    "slip_words",
    "selection_bases",
    "facts",
    "protocol",
    "scale",
    "indicators",
    "clinical_predictors",
    "alarm",
    "disease",
    "disease_criteria",
    "published_outbreaks",
    "transport",
    "protection",
    "autolysis",
    "sample_rules",
    "sample_set",
    "sample_care",
    "agents",
    "label_sheets",
    "morphometry",
    "snout_reading",
    "alarm_signs",
    "knife",
    "message",
  ];
  return {
    ...schema,
    type: "object",
    additionalProperties: false,
    required: tops,
    properties: Object.fromEntries(tops.map((name) => [name, { $ref: `#/$defs/${name}` }])),
  };
}

/** Draft 2020-12 references of our own style, without $id, which the type maker would try to fetch. */
const withoutIds = ({ $id: _id, $schema: _schema, ...schema }) => schema;

export async function writeTypes() {
  for (const kind of ["case", "visit", "farm", "results", "settings", "baseline"]) {
    const schema = withoutIds(readSchema(`${kind}.schema.json`));
    writeFileSync(join(generatedFolder, `${kind}.types.ts`), await compile(schema, schema.title, options));
  }
  const organs = readSchema("organs.schema.json");
  const entry = {
    ...withoutIds(organs),
    title: "OrganForms",
    type: "object",
    required: ["organ", "findings", "side"],
    additionalProperties: false,
    properties: {
      organ: { $ref: "#/$defs/organ" },
      findings: { $ref: "#/$defs/findings" },
      side: { $ref: "#/$defs/side" },
    },
  };
  writeFileSync(join(generatedFolder, "organs.types.ts"), await compile(entry, "OrganForms", options));
  writeFileSync(
    join(generatedFolder, "knowledge.types.ts"),
    await compile(withoutIds(knowledgeRoot()), "Knowledge", options),
  );
  return readdirSync(generatedFolder);
}
