import { formatPath } from "../../../cases/index.ts";
import { organs } from "../../../knowledge/index.ts";
import { lesionPath, statesOf } from "../../../record/index.ts";

import type { CaseRule } from "../../rule.ts";

export const normalWithFinding: CaseRule = {
  id: "normal-with-finding",
  scope: "case",
  family: "description",
  level: "error",
  summary: "An organ is normal, not examined, or described; never two of these at once.",
  protects: "The next reader cannot know which half of the contradiction is true.",
  source: { cite: "common practice of recording", confidence: "common-practice" },
  bad: {
    case: "lymphoid: {spleen: {state: normal, findings: [{process: infarct, distribution: focal, size: 8 mm}]}}",
  },
  good: { case: "lymphoid: {spleen: {state: normal, weight: 38 g}}" },
  check(one, report) {
    for (const organ of organs)
      for (const state of statesOf(one, organ)) {
        const { entry } = state;
        if (entry === undefined) continue;
        const says = (["not_examined", "not_assessable"] as const).filter((key) =>
          Object.hasOwn(entry, key),
        ) as string[];
        if (entry.state === "normal") says.push("state");
        const lesion = lesionPath(one, organ, state);
        const name = formatPath(state.path);
        if (says.length > 1)
          report(
            `${name}: ${says.map((key) => words[key]).join(" and ")} at once. Keep one.`,
            [...state.path, says[1] ?? ""],
            "key",
          );
        else if (says.length === 1 && lesion !== undefined)
          report(
            `${name}: ${words[says[0] ?? ""]}, yet ${formatPath(lesion)} says otherwise. Keep one.`,
            lesion,
          );
      }
  },
};

const words: Record<string, string> = {
  state: "normal",
  not_examined: "not examined",
  not_assessable: "not assessable",
};
