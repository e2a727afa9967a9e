/** Cerebrospinal fluid that was drawn too late to be sterile. */
import { type Case, formatPath, isAfter, type Moment, moment, type Path } from "../../../cases/index.ts";
import { brainOut, doubtfulSamples, samplesOf, soundStepAt } from "../../../record/index.ts";
import { type CaseRule, fromMemory } from "../../rule.ts";

interface Row extends Omit<CaseRule, "scope" | "family" | "check"> {
  /** After what the fluid is spoilt; undefined where that was not done, or where the other rule says the worse. */
  readonly spoiltAfter: (one: Case, fluids: readonly Fluid[]) => SpoilingStep | undefined;
  readonly advice: string;
}

interface SpoilingStep {
  readonly at: Moment;
  readonly told: string;
}

interface Fluid {
  readonly path: Path;
  readonly text: string;
  readonly at: Moment;
}

const rows: readonly Row[] = [
  {
    id: "csf-after-head-off",
    level: "error",
    summary: "Cerebrospinal fluid is drawn before the head is taken off.",
    protects: "The cut through the neck lets the fluid run out, and what is left is contaminated.",
    lookAlike:
      "Fluid drawn from the spine further back after the head was off: it had not run out, so accept the finding and name the place.",
    source: fromMemory(
      "from memory: drawn at the atlanto-occipital joint with a sterile needle before the head is taken off",
    ),
    bad: {
      case: "steps: {head_off: 2026-04-20T10:00}\nsamples: [{id: 01-A, from: csf, into: plain-tube, for: [culture], at: 2026-04-20T10:10}]\n",
    },
    good: {
      case: "steps: {head_off: 2026-04-20T10:00}\nsamples: [{id: 01-A, from: csf, into: plain-tube, for: [culture], at: 2026-04-20T09:50}]\n",
    },
    spoiltAfter(one, fluids) {
      const off = soundStepAt(one, "head_off");
      if (off === undefined) return undefined;
      const out = brainOut(one);
      if (out !== undefined && fluids.some(({ at }) => isAfter(at, out.at))) return undefined;
      return { at: off, told: `the head was off (${one.record.steps?.head_off})` };
    },
    advice: "Treat it as contaminated; from the next pig draw it first.",
  },
  {
    id: "csf-after-brain-out",
    level: "error",
    summary: "Cerebrospinal fluid is drawn before the brain is removed.",
    protects:
      "Once the skull is open the fluid is blood and water from the saw, and meningitis cannot be shown from it.",
    lookAlike:
      "Blood-free fluid from the lumbar spine: accept the finding and name the place under site; it is not what lay round the brain.",
    source: fromMemory(
      "from memory; CSF as preferred sample: Iowa State University Veterinary Diagnostic Laboratory",
    ),
    bad: {
      case: "steps: {brain_out: 2026-04-20T10:30}\nsamples: [{id: 01-A, from: csf, into: plain-tube, for: [culture], at: 2026-04-20T10:40}]\n",
    },
    good: {
      case: "steps: {brain_out: 2026-04-20T10:30}\nsamples: [{id: 01-A, from: csf, into: plain-tube, for: [culture], at: 2026-04-20T09:50}]\n",
    },
    spoiltAfter: brainOut,
    advice:
      "Do not send it as cerebrospinal fluid; from the next pig draw it first, with a sterile needle behind the head.",
  },
];

/** Several tubes, or the step and its tube, were drawn in one go: one line for those that came too late. */
export const lateFluid: readonly CaseRule[] = rows.map(({ spoiltAfter, advice, ...text }) => ({
  ...text,
  scope: "case",
  family: "timing",
  check(one, report) {
    const fluids = fluidsOf(one);
    if (fluids.length === 0) return;
    const step = spoiltAfter(one, fluids);
    const late = step === undefined ? undefined : fluids.find(({ at }) => isAfter(at, step.at));
    if (step !== undefined && late !== undefined)
      report(
        `${formatPath(late.path)}: the fluid was drawn (${late.text}) after ${step.told}. ${advice}`,
        late.path,
      );
  },
}));

/** The fluid of a case with its times: its samples, and the step. */
function fluidsOf(one: Case): readonly Fluid[] {
  const { samples, steps } = one.record;
  if (steps?.csf === undefined && !samples?.some(({ from }) => from === "csf")) return [];
  const doubtful = doubtfulSamples(one);
  const written: [Path, string | undefined][] = [
    ...samplesOf(one)
      .filter(({ sample, index }) => sample.from === "csf" && !doubtful.includes(index))
      .map(({ sample, index }): [Path, string | undefined] => [["samples", index, "at"], sample.at]),
    [["steps", "csf"], soundStepAt(one, "csf") === undefined ? undefined : steps?.csf],
  ];
  return written.flatMap(([path, text]) => {
    const at = moment(text);
    return at === undefined || text === undefined ? [] : [{ path, text, at }];
  });
}
