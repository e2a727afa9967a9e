/** What a rule asks for, why, and what to do about it. */
import { type Example, type Rule, type RuleTexts, rules, textsOf } from "../lint/index.ts";
import { type Section, section, type Topic, yamlSection } from "./explanation.ts";

const looksAt = {
  case: "one case",
  visit: "the cases of a visit together",
  results: "results of the laboratory, with their visit",
  archive: "all cases that are read together",
  file: "any one file",
  format: "any file",
} as const;

/** Stands in brackets like a rule, in every format but the text. */
const unreadable: Topic = {
  kind: "rule",
  name: "unreadable",
  title: "Every file can be read.",
  aliases: [],
  explain: () => ({
    sections: section(null, [
      "Level error. Nothing was checked in a file that could not be read, so that it is among the findings and the exit code is 2.",
      "Put the file right at the place shown, and run carcase lint again. It cannot be accepted, lowered or put into a baseline.",
    ]),
    source: {
      cite: "own choice: of a file that nobody could read, nothing may seem to be checked",
      confidence: "common-practice",
    },
  }),
};

const checked: readonly Topic[] = rules.map((rule) => ({
  kind: "rule",
  name: rule.id,
  get title() {
    return textsOf(rule).summary;
  },
  aliases: [],
  explain: () => explained(rule, textsOf(rule)),
}));

export const ruleTopics: readonly Topic[] = [...checked, unreadable];

const explained = (
  rule: Rule,
  { protects, lookAlike, source, bad, good }: RuleTexts,
): ReturnType<Topic["explain"]> => ({
  sections: [
    ...section(null, [
      `Level ${rule.level}, family ${rule.family}, looks at ${looksAt[rule.scope]}.`,
      protects,
    ]),
    ...section("Looks like it, and is none", [lookAlike]),
    ...exampleSections("Found", bad),
    ...exampleSections("Fine", good),
    ...section(null, ["Examples are laid over a complete case; a blank key is an omission."]),
    ...change(rule),
  ],
  source,
});

function exampleSections(heading: string, example: Example): Section[] {
  const { case: one, visit, settings, scale, others = [], files = [] } = example;
  return [
    ...yamlSection(heading, one),
    ...yamlSection(`${heading}, in the visit file`, visit),
    ...yamlSection(`${heading}, in carcase.yaml`, settings),
    ...yamlSection(`${heading}, in a scale file`, scale),
    ...others.flatMap((other) => yamlSection(`${heading}, in a second case of the visit`, other)),
    ...section(files.length === 0 ? null : `${heading}, beside the case`, files),
  ];
}

function change({ id, locked }: Rule): Section[] {
  if (locked)
    return section("Changing it", [
      "This rule guards the alarms or the format: its level cannot be changed and its findings cannot be accepted.",
    ]);
  return [
    ...yamlSection("Another level, in carcase.yaml", `rules: {${id}: note}   # error, warning, note or off`),
    ...yamlSection(
      "One finding accepted, in the file it is reported in",
      `accepted:\n  - {rule: ${id}, at: the.path.reported, because: why it may stay so}`,
    ),
  ];
}
