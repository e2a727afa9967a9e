import { type FormatRule, practice } from "../../rule.ts";

export const caseFormat: FormatRule = {
  id: "case-format",
  scope: "format",
  family: "format",
  level: "error",
  locked: true,
  summary: "Every key and value fits the case format.",
  protects:
    "A mistyped key would be read by nobody; it is reported with what was probably meant, never dropped in silence.",
  lookAlike:
    "A true word that the format lacks: write the nearest and the rest in a note. A comma in a text inside { } ends it: put such a text in quotes.",
  source: practice("schemas/case.schema.json, visit.schema.json and farm.schema.json of this project"),
  bad: { case: "pig: {sex: F}" },
  good: { case: "pig: {sex: female}" },
};
