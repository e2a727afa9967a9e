import { formatPath } from "../../../cases/index.ts";
import { extentPercent, findingsOf, sizesMm, volumeMl } from "../../../record/index.ts";
import { type CaseRule, practice } from "../../rule.ts";

export const measureZero: CaseRule = {
  id: "measure-zero",
  scope: "case",
  family: "description",
  level: "error",
  summary: "The measure of a finding is above zero.",
  protects: "A measure of zero is no finding; it is either a slip or a normal organ.",
  lookAlike:
    "A lesion too small to measure: leave size and extent out and write number or severity; a trace is severity: minimal.",
  source: practice("meaning of the words"),
  bad: { case: "liver_pancreas: {liver: [{process: milk-spots, distribution: multifocal, extent: 0 %}]}" },
  good: { case: "liver_pancreas: {liver: [{process: milk-spots, distribution: multifocal, extent: 1 %}]}" },
  check(one, report) {
    for (const { finding, path } of findingsOf(one))
      if (extentPercent(finding) === 0 || volumeMl(finding) === 0 || sizesMm(finding).includes(0))
        report(
          `${formatPath(path)}: a measure of zero for ${finding.process}. Write what was measured, or take the finding out.`,
          path,
        );
  },
};
