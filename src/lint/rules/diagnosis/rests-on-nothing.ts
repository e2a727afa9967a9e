import type { Case, Path } from "../../../cases/index.ts";
import { organs } from "../../../knowledge/index.ts";
import {
  lesionPath,
  resultsOf,
  type StatedDiagnosis,
  statedDiagnoses,
  statesOf,
} from "../../../record/index.ts";
import { type CaseRule, practice, type Report } from "../../rule.ts";

export const restsOnNothing: CaseRule = {
  id: "rests-on-nothing",
  scope: "case",
  family: "diagnosis",
  level: "error",
  silent: "never",
  summary: "What a diagnosis rests on is in the record: a finding of the organ, a result of the sample.",
  protects: "A reference that leads nowhere looks like proof to everybody who does not follow it.",
  lookAlike: "A normal organ can speak for a diagnosis, but nothing rests on it: say so under comment.",
  source: practice("a reference leads to what it names; this project's own format"),
  bad: {
    case: "diagnosis: {aetiologic: [{text: pneumonia of bacteria, basis: gross, rests_on: {findings: [urinary.kidneys]}}]}",
  },
  good: {
    case: "diagnosis: {aetiologic: [{text: pneumonia of bacteria, basis: gross, rests_on: {findings: [respiratory.lungs]}}]}",
  },
  check(one, report) {
    if (one.record.diagnosis === undefined) return;
    for (const stated of statedDiagnoses(one)) {
      if (stated.rests_on === undefined) continue;
      checkFindings(one, stated, report);
      checkResults(one, stated, report);
    }
  },
};

const entry = ({ path }: StatedDiagnosis, key: string, index: number): Path => [
  ...path,
  "rests_on",
  key,
  index,
];

function checkFindings(one: Case, stated: StatedDiagnosis, report: Report): void {
  for (const [index, place] of (stated.rests_on?.findings ?? []).entries()) {
    const isFound = organs
      .filter(({ id, system }) => id === place || system === place)
      .some((organ) => statesOf(one, organ).some((state) => lesionPath(one, organ, state) !== undefined));
    if (!isFound)
      report(
        `"${stated.text}" rests on ${place}, and no finding is recorded there. Describe it at the organ, or take the organ out.`,
        entry(stated, "findings", index),
      );
  }
}

function checkResults(one: Case, stated: StatedDiagnosis, report: Report): void {
  const { visit } = one;
  const all = visit === undefined ? [] : resultsOf(visit);
  for (const [index, text] of (stated.rests_on?.results ?? []).entries()) {
    const [sample = text, test] = text.split(" ");
    const named = all.filter(
      ({ samples, entry: { test: of } }) => samples.includes(sample) && (test === undefined || of === test),
    );
    const wrong =
      named.length === 0
        ? "there is no such result beside the visit. Write sample and test as results.yaml has them, such as 01-C pcr"
        : named.every(({ entry: { interpretation: said } }) => said === "not-testable")
          ? "it could not be tested. Take it out"
          : undefined;
    if (wrong !== undefined)
      report(`"${stated.text}" rests on ${text}, and ${wrong}.`, entry(stated, "results", index));
  }
}
