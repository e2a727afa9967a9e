import { formatPath } from "../../../cases/index.ts";
import { isAmong, isFixed, isFor, isSentWhole, isTissueSample, samplesOf } from "../../../record/index.ts";
import { type CaseRule, verified } from "../../rule.ts";
import { isBrainInQuestion } from "../../shared/asked-of-laboratory.ts";

/** What is in the skull or spine: pus of an ear is no sample of the brain. */
const brain = ["nervous.meninges", "nervous.brain", "nervous.spinal_cord"];

export const meningitisWithoutFluid: CaseRule = {
  id: "meningitis-without-fluid",
  scope: "case",
  family: "sampling",
  level: "warning",
  silent: "authority",
  summary:
    "When meningitis is in question cerebrospinal fluid or a meningeal swab is taken before the brain is removed.",
  protects:
    "The agent of meningitis is in the fluid and on the meninges; a brain in formalin shows the pus but not its cause.",
  lookAlike:
    "Fits of salt poisoning look the same in life: brain for: [toxicology] is passed, and so are a swab of the brain for culture, pus of a middle ear alone and a head sent whole.",
  source: verified(
    "CSF as preferred sample: Iowa State University Veterinary Diagnostic Laboratory; 36 of 54 pigs positive by culture of the meninges (Schyns et al. 2022, Veterinary Sciences 9:341)",
  ),
  bad: {
    case: "nervous: {meninges: [{process: exudate, distribution: diffuse, extent: 40 %, exudate: fibrinosuppurative, severity: moderate}]}\nsamples: [{id: 01-A, from: nervous.brain, site: left half, into: formalin, for: [histology]}, {id: 01-B, from: nervous.brain, site: right half, into: chilled, for: [pcr]}]",
  },
  good: {
    case: "nervous: {meninges: [{process: exudate, distribution: diffuse, extent: 40 %, exudate: fibrinosuppurative, severity: moderate}]}\nsamples: [{id: 01-A, from: nervous.brain, site: left half, into: formalin, for: [histology]}, {id: 01-B, from: nervous.brain, site: right half, into: chilled, for: [pcr]}, {id: 01-C, from: csf, into: plain-tube, for: [culture]}]",
  },
  check(one, report) {
    const { steps } = one.record;
    if (one.record.samples === undefined && steps?.brain_out === undefined) return;
    const samples = samplesOf(one);
    const head = samples.find(({ sample }) => isAmong(sample.from, brain) && !isSentWhole(one, sample));
    if ((head === undefined && steps?.brain_out === undefined) || !isBrainInQuestion(one)) return;
    const taken = samples.some(
      ({ sample }) =>
        sample.from === "csf" ||
        (sample.from === "nervous.meninges" && !isFixed(sample)) ||
        // A swab of the surface of the brain is one of the meninges; salt is measured in the brain.
        (sample.from === "nervous.brain" &&
          ((isFor(sample, "culture") && !isTissueSample(sample)) || isFor(sample, "toxicology"))),
    );
    if (taken) return;
    const path = head === undefined ? ["steps", "brain_out"] : ["samples", head.index];
    const step = (["csf", "meningeal_swab"] as const).find((name) => steps?.[name] !== undefined);
    const what =
      step === undefined
        ? "neither cerebrospinal fluid nor a meningeal swab was taken. Take both before the brain is removed"
        : `no sample of cerebrospinal fluid or of the meninges is listed, though steps.${step} says that it was taken. Add it`;
    report(
      `${formatPath(path)}: meningitis is in question, and ${what}: {from: csf, …}, {from: nervous.meninges, into: charcoal-medium, for: [culture], …}.`,
      path,
    );
  },
};
