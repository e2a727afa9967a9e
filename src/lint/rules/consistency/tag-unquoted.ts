import { type CaseRule, practice } from "../../rule.ts";

export const tagUnquoted: CaseRule = {
  id: "tag-unquoted",
  scope: "case",
  family: "consistency",
  level: "note",
  summary: "A tag stands in quotes.",
  protects: "Without quotes a tag is a number: 0217 becomes 217, and 12e3 becomes 12000.",
  lookAlike:
    "A tag that is a plain number and loses nothing by it: quotes do no harm, so write them all the same.",
  source: practice("YAML 1.2, numbers and strings"),
  bad: { case: "pig: {tag: 901}" },
  good: { case: 'pig: {tag: "901"}' },
  check(one, report) {
    const tag: unknown = one.record.pig?.tag;
    if (typeof tag === "number")
      report(
        `pig.tag: ${tag} is written as a number, which loses leading zeros. Quote it as on the pig: tag: "${tag}".`,
        ["pig", "tag"],
      );
  },
};
