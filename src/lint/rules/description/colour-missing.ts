import { formatPath } from "../../../cases/index.ts";
import { description } from "../../../knowledge/index.ts";
import { findingsOf } from "../../../record/index.ts";
import type { CaseRule } from "../../rule.ts";

export const colourMissing: CaseRule = {
  id: "colour-missing",
  scope: "case",
  family: "description",
  level: "note",
  summary: "A lesion that is known by its colour has one.",
  protects: "Discolouration without a colour says only that something looked odd.",
  source: description.source,
  bad: { case: "liver_pancreas: {liver: [{process: discolouration, distribution: diffuse, extent: 90 %}]}" },
  good: {
    case: "liver_pancreas: {liver: [{process: discolouration, distribution: diffuse, extent: 90 %, colour: tan}]}",
  },
  check(one, report) {
    for (const { finding, path } of findingsOf(one))
      if (description.needs.colour.includes(finding.process) && finding.colour === undefined)
        report(
          `${formatPath(path)}: which colour has the ${finding.process}? Write one plain word, such as colour: tan.`,
          path,
        );
  },
};
