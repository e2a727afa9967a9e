/** Reports words of one descriptive field that cannot stand beside the process of the finding. */
import { type Case, formatPath } from "../../cases/index.ts";
import { description } from "../../knowledge/index.ts";
import { findingsOf } from "../../record/index.ts";
import type { Report } from "../rule.ts";

export type DescriptiveField = (typeof description.contradictions)[number]["field"];

export function contradictedWords(one: Case, field: DescriptiveField, report: Report): void {
  for (const { finding, path } of findingsOf(one)) {
    const word = finding[field];
    if (word === undefined) continue;
    const against = description.contradictions.find(
      (entry) =>
        entry.field === field &&
        entry.words.includes(word) &&
        entry.processes.includes(finding.process) &&
        (entry.exudates === undefined || entry.exudates.includes(finding.exudate ?? "")),
    );
    if (against !== undefined)
      report(
        `${formatPath([...path, field])}: ${word} does not go with ${against.exudates === undefined ? finding.process : `${finding.exudate} ${finding.process}`}; ${against.because}. Correct the ${field} or the ${against.exudates === undefined ? "process" : "exudate"}.`,
        [...path, field],
      );
  }
}
