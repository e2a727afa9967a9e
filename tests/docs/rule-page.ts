/** The page of a rule, made from the rule's own text and from running its examples. */

import { sourceLine } from "../../src/knowledge/index.ts";
import type { Example, Rule } from "../../src/lint/index.ts";
import { lintExample } from "../lint/lay-example.ts";

const looksAt = {
  case: "one case",
  visit: "the cases of a visit together",
  results: "results of the laboratory, with their visit",
  archive: "all cases that are read together",
  file: "any one file",
  format: "any file",
} as const;

export function rulePage(rule: Rule): string {
  return `# ${rule.id}

${rule.summary}

Level: ${rule.level}${rule.locked ? " (a matter of safety or of the format; settings cannot change it)" : ""} · family: ${rule.family} · looks at ${looksAt[rule.scope]}

## Why

${rule.protects}

Source: ${sourceLine(rule.source)}

## Looks like it, and is none

${rule.lookAlike}

## Found

${exampleBlocks(rule.bad)}

The linter says:

${messages(rule)
  .map((message) => `> ${message}`)
  .join("\n>\n")}

## Fine

${exampleBlocks(rule.good)}

Examples are laid over a complete case; keys that are not shown are as there, and a key left blank is an omission.
${rule.locked ? "" : `\n## Another level\n\nIn \`carcase.yaml\`:\n\n\`\`\`yaml settings\nformat: 1\nrules: {${rule.id}: note}\n\`\`\`\n`}
[All rules](README.md)
`;
}

function exampleBlocks(example: Example): string {
  const blocks: string[] = [];
  const line = example.schema === undefined ? "" : `# yaml-language-server: $schema=${example.schema}\n`;
  if (example.case !== undefined) blocks.push(block(line + example.case));
  if (example.visit !== undefined) blocks.push(`In the visit file:\n\n${block(example.visit)}`);
  if (example.results !== undefined)
    blocks.push(`In the results beside the visit:\n\n${block(example.results)}`);
  if (example.today !== undefined) blocks.push(`Asked on ${example.today}.`);
  if (example.settings !== undefined) blocks.push(`In \`carcase.yaml\`:\n\n${block(example.settings)}`);
  if (example.scale !== undefined) blocks.push(`In a scale file of the practice:\n\n${block(example.scale)}`);
  for (const other of example.others ?? []) blocks.push(`In a second case of the visit:\n\n${block(other)}`);
  return blocks.join("\n\n");
}

const block = (text: string): string => `\`\`\`yaml\n${text}\n\`\`\``;

const messages = (rule: Rule): string[] => [
  ...new Set(
    lintExample(rule.bad).findings.map((finding) =>
      finding.message.replaceAll(/\S*carcase-in-turns-\w+\//g, ""),
    ),
  ),
];

export function ruleIndex(rules: readonly Rule[]): string {
  const families = [...new Set(rules.map((rule) => rule.family))];
  const sections = families.map(
    (family) =>
      `## ${family[0]?.toUpperCase()}${family.slice(1)}\n\n| rule | level | asks that |\n| --- | --- | --- |\n${rules
        .filter((rule) => rule.family === family)
        .map((rule) => `| [${rule.id}](${rule.id}.md) | ${rule.level} | ${rule.summary} |`)
        .join("\n")}`,
  );
  return `# Rules of the linter

One page a rule: why it is there, who says so, an example that is found and one that is not. These pages are made from the
rules themselves (\`npm run docs\`), and the examples run in the test-suite.

${sections.join("\n\n")}
`;
}
