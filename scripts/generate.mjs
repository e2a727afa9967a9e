// Makes everything that follows from a source: the organ and vocabulary schemas from the knowledge files,
// types and validators from the schemas, the knowledge module from its YAML, and the list of rules from their files.
import { mkdirSync } from "node:fs";
import { making } from "./build/made.mjs";
import { writeEditorSchemas } from "./generate/editor-schemas.mjs";
import { writeKnowledge } from "./generate/knowledge.mjs";
import {
  generatedFolder,
  readAlarms,
  readDiseaseCriteria,
  readDiseases,
  readYaml,
  readYamlFolder,
  readYamlTable,
} from "./generate/read.mjs";
import { writeRuleIndex } from "./generate/rule-index.mjs";
import { writeOrgansSchema, writeVocabularySchema } from "./generate/schemas.mjs";
import { writeSearchLibrary } from "./generate/search-library.mjs";
import { writeSettingsKeys } from "./generate/settings-keys.mjs";
import { writeTypes } from "./generate/types.mjs";
import { writeChecks, writeValidators } from "./generate/validators.mjs";

const made = making("generate");
mkdirSync(generatedFolder, { recursive: true });
const knowledge = {
  anatomy: readYaml("anatomy.yaml"),
  vocabulary: readYaml("vocabulary.yaml"),
  age_classes: readYaml("age-classes.yaml"),
  growth: readYaml("growth.yaml"),
  description: readYaml("description.yaml"),
  plausible: readYaml("plausible.yaml"),
  impossible_findings: readYamlTable("impossible-findings.yaml"),
  impossible_samples: readYamlTable("impossible-samples.yaml"),
  impossible_in_life: readYaml("impossible-in-life.yaml"),
  parts: readYaml("parts.yaml"),
  diagnosis_limits: readYaml("diagnosis-limits.yaml"),
  death_methods: readYaml("death-methods.yaml"),
  selection_rules: readYaml("selection-rules.yaml"),
  choosing_pigs: readYaml("choosing-pigs.yaml"),
  comparability: readYaml("comparability.yaml"),
  published_agreement: readYaml("published-agreement.yaml"),
  intervals: readYaml("intervals.yaml"),
  denial_words: readYaml("denial-words.yaml"),
  interpretation_words: readYaml("interpretation-words.yaml"),
  slip_words: readYaml("slip-words.yaml"),
  selection_bases: readYaml("selection.yaml"),
  facts: readYaml("facts.yaml"),
  protocols: readYamlFolder("protocols"),
  scales: readYamlFolder("scales"),
  indicators: readYaml("indicators.yaml"),
  clinical_predictors: readYaml("clinical-predictors.yaml"),
  alarms: readAlarms(readYaml("anatomy.yaml")),
  diseases: readDiseases(readYaml("anatomy.yaml")),
  disease_criteria: readDiseaseCriteria(readYaml("anatomy.yaml")),
  published_outbreaks: readYaml("published-outbreaks.yaml"),
  transport: readYaml("transport.yaml"),
  protection: readYaml("protection.yaml"),
  autolysis: readYaml("autolysis.yaml"),
  sample_rules: readYaml("sample-rules.yaml"),
  sample_sets: readYamlFolder("sample-sets"),
  sample_care: readYaml("sample-care.yaml"),
  agents: readYaml("agents.yaml"),
  label_sheets: readYaml("label-sheets.yaml"),
  morphometry: readYaml("morphometry.yaml"),
  snout_reading: readYaml("snout-reading.yaml"),
  alarm_signs: readYaml("alarm-signs.yaml"),
  knife: readYaml("knife.yaml"),
  messages: readYamlFolder("messages"),
};
writeVocabularySchema(knowledge);
writeOrgansSchema(knowledge.anatomy);
writeEditorSchemas();
writeKnowledge(knowledge);
writeRuleIndex();
writeSearchLibrary();
writeSettingsKeys();
writeValidators();
writeChecks();
await writeTypes();
made();
