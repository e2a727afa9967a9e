/** Containers that spoil a test: what is unfit, why, and what to use instead stand in the table of samples. */
import { sampleRules } from "../../../knowledge/index.ts";
import { samplesOf } from "../../../record/index.ts";
import { unfitUse } from "../../../sampling/index.ts";
import { listing } from "../../../words/listing.ts";
import type { CaseRule } from "../../rule.ts";

/** The id is also the name of the entry under `unfit` in sample-rules.yaml, and its source is that of the entry. */
type Row = Omit<CaseRule, "scope" | "family" | "check">;

const sourceOf = (id: string): Row["source"] => (sampleRules.unfit[id] ?? sampleRules).source;

const rows: readonly Row[] = [
  {
    id: "culture-in-formalin",
    level: "error",
    summary: "A sample for culture is not in formalin or alcohol.",
    protects: "Nothing grows from fixed tissue, and the agent that was there is lost for good.",
    lookAlike:
      "Bacteria looked for in sections by stain: that is for: [histology], and formalin is right for it.",
    source: sourceOf("culture-in-formalin"),
    bad: { case: "samples: [{id: 01-A, from: lymphoid.spleen, into: formalin, for: [culture]}]" },
    good: { case: "samples: [{id: 01-A, from: lymphoid.spleen, into: chilled, for: [culture]}]" },
  },
  {
    id: "virus-isolation-in-formalin",
    level: "error",
    summary: "A sample for virus isolation is not in formalin or alcohol.",
    protects: "Fixed virus infects no cells, and the strain can never be typed or compared.",
    lookAlike:
      "A virus shown in sections by antibody: write for: [immunohistochemistry], and the pot in formalin stands.",
    source: sourceOf("virus-isolation-in-formalin"),
    bad: { case: "samples: [{id: 01-A, from: lymphoid.tonsil, into: formalin, for: [virus-isolation]}]" },
    good: {
      case: "samples: [{id: 01-A, from: lymphoid.tonsil, into: viral-medium, for: [virus-isolation]}]",
    },
  },
  {
    id: "toxicology-in-formalin",
    level: "error",
    summary: "A sample for toxicology is fresh or frozen, not in formalin.",
    protects:
      "Formalin washes poisons out and interferes with the measurement, and a dead pig gives no second sample.",
    lookAlike:
      "The damage that a poison left, read under the microscope: that is for: [histology]; the poison itself needs the fresh piece.",
    source: sourceOf("toxicology-in-formalin"),
    bad: {
      case: "samples: [{id: 01-A, from: urinary.kidneys, into: formalin, for: [toxicology]}, {id: 01-S, from: stomach.stomach_content, into: frozen, for: [archive]}]",
    },
    good: {
      case: "samples: [{id: 01-A, from: urinary.kidneys, into: frozen, for: [toxicology]}, {id: 01-S, from: stomach.stomach_content, into: frozen, for: [archive]}]",
    },
  },
  {
    id: "histology-of-frozen",
    level: "error",
    summary: "Tissue for histology is fixed, never frozen.",
    protects: "Ice crystals tear the cells, and the slide shows holes instead of a lesion.",
    lookAlike:
      "A frozen piece kept in case other tests are wanted: for: [archive]. A carcass that was frozen is the matter of frozen-carcass-histology.",
    source: sourceOf("histology-of-frozen"),
    bad: { case: "samples: [{id: 01-A, from: liver_pancreas.liver, into: frozen, for: [histology]}]" },
    good: {
      case: "samples: [{id: 01-A, from: liver_pancreas.liver, into: frozen, for: [toxicology], amount: 50 g}, {id: 01-S, from: stomach.stomach_content, into: frozen, for: [archive]}]",
    },
  },
  {
    id: "histology-unfixed",
    level: "warning",
    summary: "Tissue for histology goes into formalin at the table.",
    protects: "Unfixed tissue rots on the way, and the pathologist reads autolysis.",
    lookAlike:
      "A head or carcass sent whole, which the laboratory fixes itself, is passed; a smear is for: [cytology].",
    source: sourceOf("histology-unfixed"),
    bad: {
      case: "samples: [{id: 01-A, from: liver_pancreas.liver, into: chilled, for: [histology, culture]}]",
    },
    good: { case: "samples: [{id: 01-A, from: liver_pancreas.liver, into: chilled, for: [culture]}]" },
  },
  {
    id: "pcr-from-formalin",
    level: "warning",
    summary: "A sample for PCR is not in formalin.",
    protects: "Formalin breaks up nucleic acid, and a negative result then means nothing.",
    lookAlike:
      "PCR from the wax block, agreed with the laboratory: accept the finding and name the laboratory; alcohol in place of formalin is passed.",
    source: sourceOf("pcr-from-formalin"),
    bad: { case: "samples: [{id: 01-A, from: lymphoid.tonsil, into: formalin, for: [histology, pcr]}]" },
    good: {
      case: "samples: [{id: 01-A, from: lymphoid.tonsil, into: formalin, for: [histology, immunohistochemistry]}]",
    },
  },
  {
    id: "pcr-from-heparin",
    level: "warning",
    summary: "Blood for PCR is not in a heparin tube.",
    protects: "Heparin inhibits the reaction, and a viraemic pig comes back negative.",
    lookAlike:
      "White cells washed out of heparin blood by the laboratory: ask first, and accept the finding with its answer.",
    source: sourceOf("pcr-from-heparin"),
    bad: { case: "samples: [{id: 01-A, from: blood, into: heparin-tube, for: [pcr]}]" },
    good: { case: "samples: [{id: 01-A, from: blood, into: edta-tube, for: [pcr]}]" },
  },
  {
    id: "pcr-swab-in-charcoal",
    level: "warning",
    summary: "A swab for PCR is dry or in viral medium, not in charcoal.",
    protects: "Charcoal inhibits the reaction; a swab with too much of it is negative whatever was there.",
    lookAlike:
      "One swab for culture and another for PCR from the same nostril: write them as two samples, each with its own medium.",
    source: sourceOf("pcr-swab-in-charcoal"),
    bad: {
      case: "samples: [{id: 01-A, from: respiratory.nares, into: charcoal-medium, for: [culture, pcr]}]",
    },
    good: { case: "samples: [{id: 01-A, from: respiratory.nares, into: charcoal-medium, for: [culture]}]" },
  },
  {
    id: "culture-on-dry-swab",
    level: "warning",
    summary: "A swab for culture is in transport medium.",
    protects:
      "The agents that matter in pigs die on a dry swab within hours; what still grows is the hardy rest.",
    lookAlike:
      "A swab that was streaked on a plate at the table: what travels is the plate, so leave culture out here and say so in the note.",
    source: sourceOf("culture-on-dry-swab"),
    bad: { case: "samples: [{id: 01-A, from: respiratory.bronchi, into: dry-swab, for: [culture]}]" },
    good: { case: "samples: [{id: 01-A, from: respiratory.bronchi, into: dry-swab, for: [pcr]}]" },
  },
  {
    id: "culture-of-frozen",
    level: "warning",
    summary: "A sample for culture is chilled, not frozen.",
    protects:
      "Freezing kills the delicate agent and spares the hardy ones; no growth is then read as nothing there.",
    lookAlike:
      "A frozen strain, or tissue for hardy germs such as salmonella that the laboratory takes frozen: accept the finding with its answer.",
    source: sourceOf("culture-of-frozen"),
    bad: { case: "samples: [{id: 01-A, from: respiratory.lungs, into: frozen, for: [culture]}]" },
    good: { case: "samples: [{id: 01-A, from: respiratory.lungs, into: frozen, for: [pcr]}]" },
  },
  {
    id: "virus-isolation-medium",
    level: "warning",
    summary: "A sample for virus isolation is chilled tissue, serum, or a swab in viral medium.",
    protects:
      "Virus dries out on a plain swab, sticks to charcoal, and is overgrown in media made for bacteria.",
    lookAlike:
      "Citrate, EDTA or heparin blood, serum and chilled tissue may all be isolated from, and are passed; a swab needs viral medium.",
    source: sourceOf("virus-isolation-medium"),
    bad: {
      case: "samples: [{id: 01-A, from: respiratory.nares, into: dry-swab, for: [pcr, virus-isolation]}]",
    },
    good: {
      case: "samples: [{id: 01-A, from: respiratory.nares, into: viral-medium, for: [pcr, virus-isolation]}]",
    },
  },
  {
    id: "serology-from-anticoagulant",
    level: "warning",
    summary: "Blood for serology is in a plain tube.",
    protects: "Antibody is measured in serum; additives dilute it and interfere with many tests.",
    lookAlike:
      "Plasma that the laboratory takes for its test: accept the finding with its answer; serum poured off earlier is from: serum.",
    source: sourceOf("serology-from-anticoagulant"),
    bad: { case: "samples: [{id: 01-A, from: blood, into: edta-tube, for: [serology]}]" },
    good: { case: "samples: [{id: 01-A, from: blood, into: plain-tube, for: [serology]}]" },
  },
];

export const containers: readonly CaseRule[] = rows.map((row) => ({
  ...row,
  scope: "case",
  family: "sampling",
  check(one, report) {
    if (one.record.samples === undefined) return;
    for (const { sample, index } of samplesOf(one)) {
      const unfit = unfitUse(one, sample, row.id);
      if (unfit !== undefined)
        report(
          `samples[${index}].into: ${sample.id} is for ${listing(unfit.tests)} but ${inContainer(unfit.into)}: ${unfit.why}. ${unfit.instead}.`,
          ["samples", index, "into"],
        );
    }
  },
}));

/** `frozen`, `on a dry swab`, `in an EDTA tube`, `in formalin`. */
function inContainer(into: string): string {
  if (into === "chilled" || into === "frozen") return into;
  if (into === "dry-swab") return "on a dry swab";
  if (into === "edta-tube") return "in an EDTA tube";
  return `in ${into.endsWith("-tube") ? "a " : ""}${into.replaceAll("-", " ")}`;
}
