import { isFixed, isSentWhole, samplesOf } from "../../../record/index.ts";
import { type CaseRule, verified } from "../../rule.ts";
import { isBrainInQuestion } from "../../shared/asked-of-laboratory.ts";

export const brainNotHalved: CaseRule = {
  id: "brain-not-halved",
  scope: "case",
  family: "sampling",
  level: "warning",
  silent: "authority",
  summary: "When the brain is in question one half is fixed and the other is kept fresh or frozen.",
  protects:
    "The fixed half shows the lesion, the fresh half the agent or the sodium; one without the other leaves the case open.",
  lookAlike:
    "A brain left in its head for the laboratory to halve: site: whole head, or nervous.brain: {taken: left-in-skull, …}, is passed.",
  source: verified("Animal Health Laboratory, University of Guelph: half and half"),
  bad: {
    case: "nervous: {meninges: [{process: exudate, distribution: diffuse, extent: 40 %, exudate: fibrinosuppurative, severity: moderate}]}\nsamples: [{id: 01-A, from: nervous.brain, into: formalin, for: [histology]}, {id: 01-C, from: csf, into: plain-tube, for: [culture]}]",
  },
  good: {
    case: "nervous: {meninges: [{process: exudate, distribution: diffuse, extent: 40 %, exudate: fibrinosuppurative, severity: moderate}]}\nsamples: [{id: 01-A, from: nervous.brain, into: formalin, for: [histology]}, {id: 01-C, from: csf, into: plain-tube, for: [culture]}, {id: 01-B, from: nervous.brain, site: right half, into: frozen, for: [pcr]}]",
  },
  check(one, report) {
    if (one.record.samples === undefined) return;
    const brain = samplesOf(one).filter(
      ({ sample }) =>
        sample.from === "nervous.brain" && sample.into !== undefined && !isSentWhole(one, sample),
    );
    const fixed = brain.filter(({ sample }) => isFixed(sample));
    const [first] = brain;
    if (first === undefined || (fixed.length > 0 && fixed.length < brain.length)) return;
    if (!isBrainInQuestion(one)) return;
    const isFixedAlone = fixed.length > 0;
    // A part of the brain is no whole that could still be halved.
    const says = brain.every(({ sample }) => sample.site !== undefined)
      ? `no part of the brain was ${isFixedAlone ? "kept chilled or frozen: keep one" : "fixed: fix one"}.`
      : `all of the brain is ${isFixedAlone ? "fixed" : "fresh"}. Halve it along the midline: one half whole into formalin, the other chilled or frozen.`;
    report(`samples[${first.index}].into: ${says}`, ["samples", first.index, "into"]);
  },
};
