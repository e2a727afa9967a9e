import { formatPath } from "../../../cases/index.ts";
import { description } from "../../../knowledge/index.ts";
import { findingsOf } from "../../../record/index.ts";
import type { CaseRule, RuleRow } from "../../rule.ts";

interface DescriptiveField extends RuleRow {
  readonly field: (typeof description.contradictions)[number]["field"];
}

const rows: readonly DescriptiveField[] = [
  {
    id: "colour-contradiction",
    field: "colour",
    level: "error",
    summary: "The colour of a lesion goes with its process.",
    protects: "Red icterus or congestion of unchanged colour is a slip in one of the two words.",
    source: description.source,
    bad: {
      case: "liver_pancreas: {liver: [{process: congestion, distribution: diffuse, extent: 90 %, colour: unchanged}]}",
    },
    good: {
      case: "liver_pancreas: {liver: [{process: congestion, distribution: diffuse, extent: 90 %, colour: dark-red}]}",
    },
  },
  {
    id: "consistency-contradiction",
    field: "consistency",
    level: "error",
    summary: "The consistency of a lesion goes with its process.",
    protects: "Soft dark lung is not pneumonia; called consolidation it spoils every lung score of the herd.",
    source: description.source,
    bad: {
      case: "respiratory: {lungs: {findings: [{process: consolidation, distribution: cranioventral, extent: 14 %, colour: dark-red, consistency: soft}]}}",
    },
    good: {
      case: "respiratory: {lungs: {findings: [{process: consolidation, distribution: cranioventral, extent: 14 %, colour: dark-red, consistency: firm}]}}",
    },
  },
  {
    id: "exudate-contradiction",
    field: "exudate",
    level: "error",
    summary: "The exudate of a lesion goes with its process.",
    protects: "An abscess without pus or an effusion of nothing sends the laboratory after the wrong cause.",
    source: description.source,
    bad: {
      case: "cardiovascular: {pericardium: [{process: effusion, distribution: diffuse, volume: 15 ml, exudate: none}]}",
    },
    good: {
      case: "cardiovascular: {pericardium: [{process: effusion, distribution: diffuse, volume: 15 ml, exudate: serous}]}",
    },
  },
  {
    id: "duration-contradiction",
    field: "duration",
    level: "error",
    summary: "The duration of a lesion is long enough for its process.",
    protects: "A scar formed this morning dates the disease wrongly, and the wrong group is sampled.",
    source: description.source,
    bad: {
      case: "respiratory: {lungs: {findings: [{process: scar, distribution: focal, size: 12 mm, duration: peracute}]}}",
    },
    good: {
      case: "respiratory: {lungs: {findings: [{process: scar, distribution: focal, size: 12 mm, duration: chronic}]}}",
    },
  },
];

/** Words of one descriptive field that cannot stand beside the process of the finding. */
export const contradictedWords: readonly CaseRule[] = rows.map(({ field, ...rule }) => {
  const contradictions = description.contradictions.filter((entry) => entry.field === field);
  return {
    ...rule,
    scope: "case",
    family: "description",
    check(one, report) {
      for (const { finding, path } of findingsOf(one)) {
        const { [field]: word, process, exudate = "" } = finding;
        if (word === undefined) continue;
        const against = contradictions.find(
          ({ words, processes, exudates }) =>
            words.includes(word) &&
            processes.includes(process) &&
            (exudates === undefined || exudates.includes(exudate)),
        );
        if (against === undefined) continue;
        const [lesion, other] =
          against.exudates === undefined ? [process, "process"] : [`${exudate} ${process}`, "exudate"];
        const at = [...path, field];
        report(
          `${formatPath(at)}: ${word} does not go with ${lesion}; ${against.because}. Correct the ${field} or the ${other}.`,
          at,
        );
      }
    },
  };
});
