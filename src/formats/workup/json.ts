/** A work-up for scripts. Field names are stable; docs/json.md describes them. */
import type { Evidence } from "../../patterns/index.ts";
import type { PlacedResult } from "../../record/index.ts";
import {
  countsOf,
  criteriaOf,
  type Fit,
  type Met,
  settling,
  toldApart,
  unexplained,
  type Workup,
} from "../../workup/index.ts";
import { outputJson } from "../page/json.ts";

export const workupJson = (workups: readonly Workup[]): string =>
  outputJson("workup", 1, {
    workups: workups.map((workup) => {
      const { subject, fits, excluded } = workup;
      return {
        of: "cases" in subject ? "visit" : "case",
        id: subject.id,
        file: subject.file,
        fits: fits.map((fit) => fitJson(fit, workup)),
        excluded: excluded.map((fit) => fitJson(fit, workup)),
        unexplained: unexplained(subject, fits).map(({ lesion, by }) => ({
          ...evidenceJson(lesion),
          explained_by: by.map(({ disease }) => disease.id),
        })),
      };
    }),
  });

function fitJson(fit: Fit, { subject, fits }: Workup) {
  const { disease, favour, against, age, unseen, absent } = fit;
  const criteria = criteriaOf(disease, subject);
  return {
    disease: disease.id,
    name: disease.name,
    notifiable: disease.notifiable,
    counts: countsOf(fit),
    other_forms: fit.otherForms.map((other) => ({ disease: other.disease.id, counts: countsOf(other) })),
    age: age ?? null,
    alarm_not_raised: fit.isUnalarmed,
    excluded_by_authority: fit.testedNegative.map(evidenceJson),
    published_outbreaks: fit.likeness,
    for: favour.map(metJson),
    against: against.map(metJson),
    results: {
      positive: fit.results.positive.map(resultJson),
      negative: fit.results.negative.map(resultJson),
    },
    not_looked_at: unseen.map(({ statement: { says, strength }, organs }) => ({ says, strength, organs })),
    not_there: absent.map(({ says, strength }) => ({ says, strength })),
    settled_by: settling(disease, subject).map(
      ({ confirmation: { test, sample, into, agent, says }, inHand }) => ({
        test,
        sample,
        into: into ?? null,
        agent: agent ?? null,
        says,
        in_hand: inHand.map(({ one, sample: taken, index, asked, answered }) => ({
          file: one.file,
          line: one.document.where(["samples", index]).line,
          sample: taken.id ?? null,
          from: taken.from,
          asked,
          answered,
        })),
      }),
    ),
    told_apart: toldApart(fit, fits).map(({ from, apart }) => ({ from: from.id, apart })),
    criteria:
      criteria === undefined
        ? null
        : {
            title: criteria.criteria.title,
            of: criteria.subject.id,
            met: criteria.met,
            needed: criteria.criteria.needs,
            source: criteria.criteria.source,
            criteria: criteria.checked.map(({ criterion: { says, test }, answer, results }) => ({
              says,
              answer: answer.is,
              test: test ?? null,
              evidence: answer.is === "met" ? answer.evidence.map(evidenceJson) : [],
              results: results.map(resultJson),
            })),
          },
  };
}

function resultJson({ file, path, samples, entry }: PlacedResult) {
  const { line, column } = file.document.where(path);
  const { test, agent } = entry;
  return { file: file.file, line, column, samples, test, agent: agent ?? null };
}

const metJson = ({ statement: { says, source }, strength, evidence }: Met) => ({
  strength,
  says,
  source,
  evidence: evidence.map(evidenceJson),
});

function evidenceJson({ subject, path, text }: Evidence) {
  const { line, column } = subject.document.where(path);
  return { file: subject.file, line, column, path, text };
}
