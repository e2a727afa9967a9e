import { type Case, isAfter } from "../../../cases/index.ts";
import { autolysis, organById } from "../../../knowledge/index.ts";
import { isFixed, isFor, isSampledAfter, samplesOf, soundStepAt } from "../../../record/index.ts";
import { listing } from "../../../words/listing.ts";
import { type CaseRule, practice } from "../../rule.ts";
import { isGutInQuestion } from "../../shared/asked-of-laboratory.ts";

export const gutFixedAfterOpening: CaseRule = {
  id: "gut-fixed-after-opening",
  scope: "case",
  family: "timing",
  level: "warning",
  summary: "Gut for histology is cut out closed, before the gut is opened.",
  protects:
    "Fingers, scissors and water that run along an opened gut strip off the villi that histology needs.",
  lookAlike:
    "A piece with a lesion that was seen only in the opened gut: in a pig without diarrhoea it is passed; else fix some closed pieces before.",
  source: practice(
    "closed pieces first, lumen last: Animal Health Laboratory, University of Guelph; order of this project",
  ),
  bad: {
    case: "steps: {gut_opened: 2026-04-20T09:20, gut_fixed: 2026-04-20T09:25}\nopened: {at: 2026-04-20T09:15}\nsamples: ",
  },
  good: {
    case: "steps: {gut_fixed: 2026-04-20T09:20, gut_opened: 2026-04-20T10:50}\nopened: {at: 2026-04-20T09:15}\nsamples: ",
  },
  check(one, report) {
    if (one.record.steps?.gut_opened === undefined) return;
    const opened = soundStepAt(one, "gut_opened");
    if (opened === undefined) return;
    const told = `after the gut had been opened (${one.record.steps.gut_opened})`;
    const advice = "Cut out closed pieces first, slit one end and fix them; open the rest at the very end.";
    const fixed = soundStepAt(one, "gut_fixed");
    if (fixed !== undefined && isAfter(fixed, opened))
      report(`steps.gut_fixed: gut was fixed (${one.record.steps.gut_fixed}) ${told}. ${advice}`, [
        "steps",
        "gut_fixed",
      ]);
    // A lesion found in the opened gut may follow the closed pieces, and without diarrhoea it may be all that is wanted.
    if (fixed !== undefined) return;
    const pieces = samplesOf(one).filter(
      ({ sample }) =>
        isFixed(sample) &&
        isFor(sample, "histology") &&
        autolysis.gut.includes(sample.from) &&
        (isGutInQuestion(one) || !hasLesion(one, sample.from)),
    );
    const late = pieces.filter(({ sample }) => isSampledAfter(one, sample, "gut_opened"));
    const [first] = late;
    if (first !== undefined && late.length === pieces.length)
      report(
        `samples[${first.index}].at: ${listing(late.map(({ sample }) => sample.id))} went into formalin ${told}. ${advice}`,
        ["samples", first.index, "at"],
      );
  },
};

function hasLesion(one: Case, from: string): boolean {
  const organ = organById(from);
  return organ !== undefined && one.organ(organ).findings.length > 0;
}
