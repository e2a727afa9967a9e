import type { Case } from "../../../cases/index.ts";
import { agentName } from "../../../knowledge/agents.ts";
import {
  type PlacedResult,
  resultsOf,
  resultsOfCase,
  type StatedDiagnosis,
  speaksOf,
  statedDiagnoses,
} from "../../../record/index.ts";
import { type CaseRule, practice } from "../../rule.ts";

export const diagnosisWithoutResult: CaseRule = {
  id: "diagnosis-without-result",
  scope: "case",
  family: "diagnosis",
  level: "warning",
  summary: "A diagnosis that rests on the laboratory or on histology has its result beside the visit.",
  protects:
    "A cause that no result shows is quoted as proven at the next visit, and the herd is vaccinated for it.",
  lookAlike:
    "The result of a pen mate: name its sample under rests_on, or say so under comment. Visits without a file of results are passed where the diagnosis is a mere text.",
  source: practice("a diagnosis names the result that it rests on; common practice"),
  bad: {
    case: "diagnosis: {aetiologic: [{text: Mycoplasma hyopneumoniae, agent: mycoplasma-hyopneumoniae, basis: laboratory}]}",
    results: "entries: [{sample: 01-B, test: pcr, agent: prrsv, interpretation: positive}]",
  },
  good: {
    case: "diagnosis: {aetiologic: [{text: Mycoplasma hyopneumoniae, agent: mycoplasma-hyopneumoniae, basis: laboratory}]}",
    results:
      "entries: [{sample: 01-B, test: pcr, agent: mycoplasma-hyopneumoniae, interpretation: positive}]",
  },
  check(one, report) {
    const { diagnosis } = one.record;
    if (diagnosis === undefined || diagnosis.comment !== undefined) return;
    // A positive test of the herd answers as well.
    if (one.visit?.record.tests?.some(({ result }) => result === "positive")) return;
    const hasResults = (one.visit?.results.length ?? 0) > 0;
    for (const stated of statedDiagnoses(one)) {
      const basis = stated.basis ?? (stated.kind === "morphologic" ? undefined : diagnosis.basis);
      if (stated.comment !== undefined || (!stated.isReasoned && !hasResults)) continue;
      const wrong =
        basis === "laboratory"
          ? outruns(stated, resultsFor(one, stated))
          : basis === "histology" && !resultsFor(one, stated).some(({ entry }) => slides.has(entry.test))
            ? "rests on histology, and no result of a slide of this pig is there. Write it into results.yaml, or basis: pending"
            : undefined;
      if (wrong !== undefined) report(`"${stated.text}" ${wrong}.`, stated.path);
    }
  },
};

const slides: ReadonlySet<string> = new Set(["histology", "immunohistochemistry", "cytology"]);

/** Results of this pig, and those of other samples of the visit that the diagnosis names. */
function resultsFor(one: Case, { rests_on: rests }: StatedDiagnosis): readonly PlacedResult[] {
  const named = new Set((rests?.results ?? []).map((text) => text.split(" ")[0] ?? text));
  if (named.size === 0 || one.visit === undefined) return resultsOfCase(one);
  const others = resultsOf(one.visit).filter(({ samples }) => samples.some((id) => named.has(id)));
  return [...new Set([...resultsOfCase(one), ...others])];
}

/** How it goes further than the results, a clause; undefined where they carry it. */
function outruns({ agent }: StatedDiagnosis, results: readonly PlacedResult[]): string | undefined {
  const shown = results.filter(
    (result) => isShown(result) && (agent === undefined || speaksOf(result, agent)),
  );
  const what = agent === undefined ? "positive" : `positive for ${agentName(agent)}`;
  if (shown.length === 0)
    return `rests on the laboratory, and no result of this pig is ${what}. Write the result into results.yaml, name the sample of another pig under rests_on, or write basis: pending`;
  if (shown.every(({ isPool, samples }) => isPool && samples.length > 1))
    return `rests on the laboratory, and only a pool is ${what}, which does not say which of its pigs. Name the single test, or say under comment why the pool is enough`;
  return undefined;
}

/** Whether something was found: said so, or measured without being called negative. */
const isShown = ({ entry }: PlacedResult): boolean =>
  entry.interpretation === "positive" ||
  (entry.interpretation === undefined &&
    [entry.value, entry.titre, entry.sequence, entry.antibiogram, entry.lesions, entry.text].some(
      (one) => one !== undefined,
    ));
