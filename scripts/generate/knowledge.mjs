// Checks every knowledge file against its schema and writes them all as one TypeScript module.
import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { generatedFolder } from "./read.mjs";
import { schemaCompiler } from "./validators.mjs";

/** @param knowledge parsed knowledge by schema definition: one value, or a list for folders of files */
export function writeKnowledge(knowledge) {
  const ajv = schemaCompiler();
  const faults = [];
  for (const [name, value] of Object.entries(knowledge)) {
    const singular = { protocols: "protocol", scales: "scale", alarms: "alarm" }[name];
    const values = singular === undefined ? [value] : value;
    const check = ajv.getSchema(`knowledge.schema.json#/$defs/${singular ?? name}`);
    for (const item of values) {
      if (check(item)) continue;
      for (const e of check.errors)
        faults.push(`${name} ${item.id ?? ""} ${e.instancePath} ${e.message} ${JSON.stringify(e.params)}`);
    }
  }
  if (faults.length > 0) throw new Error(`knowledge files do not match their schema:\n${faults.join("\n")}`);
  const types = {
    anatomy: "Anatomy",
    vocabulary: "Vocabulary",
    age_classes: "AgeClasses",
    growth: "Growth",
    description: "Description",
    plausible: "Plausible",
    death_methods: "DeathMethods",
    selection_rules: "SelectionRules",
    interpretation_words: "InterpretationWords",
    selection_bases: "SelectionBases",
    facts: "Facts",
    protocols: "Protocol[]",
    scales: "Scale[]",
    indicators: "Indicators",
    alarms: "AlarmPattern[]",
    transport: "Transport",
    protection: "Protection",
    autolysis: "Autolysis",
    sample_rules: "SampleRules",
  };
  const imports = Object.values(types).map((type) => type.replace("[]", ""));
  const lines = Object.entries(types).map(
    ([name, type]) =>
      `export const ${name}: ${type} = JSON.parse(${JSON.stringify(JSON.stringify(knowledge[name]))});`,
  );
  writeFileSync(
    join(generatedFolder, "knowledge.ts"),
    `// Made from src/knowledge/*.yaml by npm run generate. Not edited by hand.
import type { ${imports.join(", ")} } from "./knowledge.types.ts";
${lines.join("\n")}
`,
  );
}
