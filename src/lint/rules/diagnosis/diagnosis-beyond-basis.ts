import type { Case } from "../../../cases/index.ts";
import { diagnosisLimits } from "../../../knowledge/index.ts";
import { wordIn } from "../../../notes/index.ts";
import {
  agentsIn,
  isPending,
  morphologicDiagnoses,
  type NamedCause,
  namedCauses,
} from "../../../record/index.ts";
import { listing } from "../../../words/listing.ts";
import type { CaseRule, Report } from "../../rule.ts";

export const diagnosisBeyondBasis: CaseRule = {
  id: "diagnosis-beyond-basis",
  scope: "case",
  family: "diagnosis",
  level: "warning",
  summary:
    "A diagnosis goes no further than its samples, the answers that came back, and the age of the pig.",
  protects:
    "A virus that was shown in a bacterial culture was shown nowhere: the herd is vaccinated against a word in a file.",
  lookAlike:
    "A result that came from another pig of the visit: name it under diagnosis.comment. Histology shows viruses, bacteria and poisons too where the lesion is their own.",
  source: diagnosisLimits.source,
  bad: {
    case: "diagnosis: {aetiologic: [Mycoplasma hyopneumoniae], basis: laboratory}\nsamples: [{id: 01-A, from: respiratory.lungs, into: frozen, for: [toxicology]}, {id: 01-S, from: stomach.stomach_content, into: frozen, for: [archive]}]",
  },
  good: {
    case: "diagnosis: {aetiologic: [Mycoplasma hyopneumoniae], basis: laboratory}\nsamples: [{id: 01-A, from: respiratory.lungs, into: chilled, for: [pcr]}]",
  },
  check(one, report) {
    if (one.record.diagnosis === undefined) return;
    reportAges(one, report);
    if (one.record.diagnosis.comment !== undefined || isPending(one)) return;
    reportSamples(one, report);
    reportNegative(one, report);
  },
};

/** Words of a diagnosis that a pig of this age cannot have. */
function reportAges(one: Case, report: Report): void {
  const { ageClass, ageDays } = one;
  for (const { text, said, path } of [...morphologicDiagnoses(one), ...namedCauses(one)])
    for (const { words, classes, from_days: from, to_days: to, because } of Object.values(
      diagnosisLimits.ages,
    )) {
      const word = wordIn(said, words);
      if (word === undefined) continue;
      const isOfClass = classes === undefined || ageClass === undefined || classes.includes(ageClass);
      const isOfAge =
        ageDays === undefined || (ageDays >= (from ?? 0) && ageDays <= (to ?? Number.POSITIVE_INFINITY));
      if (!isOfClass || !isOfAge)
        report(
          `"${text}" says ${word} of a pig of ${one.record.pig?.age ?? `class ${ageClass}`}; ${because}. Correct the diagnosis, the age or the class.`,
          path,
        );
    }
}

/** The tests that were asked of this pig, and of its visit as a whole. */
function testsAsked({ record, visit }: Case): ReadonlySet<string> {
  const ofVisit = (visit?.record.tests ?? []).length > 0 ? ["pcr", "culture"] : [];
  return new Set([...(record.samples ?? []).flatMap(({ for: tests = [] }) => tests), ...ofVisit]);
}

function reportSamples(one: Case, report: Report): void {
  const { basis, aetiologic = [] } = one.record.diagnosis ?? {};
  const asked = testsAsked(one);
  if (basis === undefined) return;
  const rests = Object.hasOwn(diagnosisLimits.bases, basis) ? diagnosisLimits.bases[basis] : undefined;
  if (rests === undefined || aetiologic.length === 0) return;
  const { tests, write } = rests;
  if (tests.length === 0 ? asked.size === 0 : !tests.some((test) => asked.has(test))) {
    report(
      `diagnosis.basis: ${basis}, and no sample of this case was sent ${tests.length === 0 ? "for a test" : `for ${listing(tests, "or")}`}. Write the sample, or ${write}.`,
      ["diagnosis", "basis"],
    );
    return;
  }
  if (basis !== "laboratory") return;
  for (const cause of namedCauses(one)) reportAgent(cause, asked, report);
}

function reportAgent(cause: NamedCause, asked: ReadonlySet<string>, report: Report): void {
  const { text, path } = cause;
  const kinds = agentsIn(cause);
  const able = kinds.flatMap(({ tests }) => tests);
  const [kind] = kinds;
  if (kind !== undefined && !able.some((test) => asked.has(test)))
    report(
      `"${text}" is ${kind.title}, and none of the tests asked for (${[...asked].join(", ")}) shows one. Write the sample that answered (${listing(kind.tests, "or")}), or basis: pending.`,
      path,
    );
}

/** A cause that the answer of the laboratory excluded. */
function reportNegative(one: Case, report: Report): void {
  for (const { test, words } of Object.values(diagnosisLimits.negative)) {
    const results = (one.visit?.record.tests ?? [])
      .filter((entry) => entry.test === test)
      .map(({ result }) => result);
    if (results.length === 0 || !results.every((result) => result === "negative")) continue;
    for (const { text, said, path } of [...morphologicDiagnoses(one), ...namedCauses(one)])
      if (wordIn(said, words) !== undefined && !/\b(?:no|not|non|without)\b/i.test(said))
        report(
          `"${text}", yet the ${test.replace("-", " ")} was looked for in this visit and not found. Correct the diagnosis, or say under comment which later answer it rests on.`,
          path,
        );
  }
}
