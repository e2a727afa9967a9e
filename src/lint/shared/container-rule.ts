/** A rule on containers that spoil a test: what is unfit, why and what instead stands in the table of samples. */
import { sampleRules } from "../../knowledge/index.ts";
import { isSentWhole, samplesOf } from "../../record/index.ts";
import { unfitContainers } from "../../sampling/index.ts";
import { listing } from "../../words/listing.ts";
import type { CaseRule, Example, Level } from "../rule.ts";

interface ContainerRuleText {
  /** Also the name of the entry under `unfit` in sample-rules.yaml. */
  readonly id: string;
  readonly level: Level;
  readonly summary: string;
  readonly protects: string;
  readonly bad: Example;
  readonly good: Example;
}

/** `frozen`, `on a dry swab`, `in formalin`. */
function inContainer(into: string): string {
  if (into === "chilled" || into === "frozen") return into;
  if (into === "dry-swab") return "on a dry swab";
  return into.endsWith("-tube") ? `in a tube (${into})` : `in ${into.replaceAll("-", " ")}`;
}

export function containerRule(text: ContainerRuleText): CaseRule {
  const { source } = sampleRules.unfit[text.id] ?? sampleRules;
  return {
    ...text,
    scope: "case",
    family: "sampling",
    source,
    check(one, report) {
      for (const { sample, index } of samplesOf(one))
        for (const { id, into, tests, why, instead } of unfitContainers(sample))
          if (id === text.id && !(id === "histology-unfixed" && isSentWhole(one, sample)))
            report(
              `samples[${index}].into: ${sample.id} is ${inContainer(into)} and asked for ${listing(tests)}: ${why}. ${instead}.`,
              ["samples", index, "into"],
            );
    },
  };
}
