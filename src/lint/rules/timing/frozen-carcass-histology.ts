import { frozenTooSoon, samplesOf } from "../../../record/index.ts";
import { isFrozenHistology } from "../../../sampling/index.ts";
import { type CaseRule, verified } from "../../rule.ts";

export const frozenCarcassHistology: CaseRule = {
  id: "frozen-carcass-histology",
  scope: "case",
  family: "timing",
  level: "warning",
  summary: "Histology is not asked of a carcass that was frozen.",
  protects:
    "Ice crystals tear the cells, and on thawing blood seeps into every organ; the slide shows the freezer.",
  lookAlike:
    "A carcass with a rim of frost that was soft inside: write the state it had inside, such as fresh, and the frost in opened.note.",
  source: verified(
    "Alabama Veterinary Diagnostic Laboratories, histopathology: never freeze; frozen carcasses are unlikely to be accepted (guide of a Welsh veterinary centre for senders)",
  ),
  bad: {
    case: "death: {at: 2026-04-18T09:10}\nopened: {state: frozen}\nsamples: [{id: 01-A, from: lymphoid.spleen, into: formalin, for: [histology]}]",
  },
  good: {
    case: "death: {at: 2026-04-18T09:10}\nopened: {state: frozen}\nsamples: [{id: 01-A, from: lymphoid.spleen, into: frozen, for: [pcr]}]",
  },
  check(one, report) {
    if (one.record.opened?.state !== "frozen" || one.record.samples === undefined) return;
    // Then the state itself is doubted, once.
    if (frozenTooSoon(one) !== undefined) return;
    for (const { sample, index } of samplesOf(one))
      if ((sample.for ?? []).some((test) => isFrozenHistology(one, test)))
        report(
          `samples[${index}].for: the carcass was frozen, so histology of ${sample.id} will show torn cells. Ask for PCR or toxicology instead, and open a fresh pig for histology.`,
          ["samples", index, "for"],
        );
  },
};
