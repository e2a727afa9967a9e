/** What is wrong with a sample by its own entries: left out, unsuited to its test, badly fixed, pooled. */
import { quantity } from "../../../cases/index.ts";
import { sampleRules } from "../../../knowledge/index.ts";
import { affirmed } from "../../../notes/index.ts";
import {
  isFixed,
  isFor,
  isFreshTissue,
  isGut,
  isMaterial,
  materialTitle,
  nearestMaterial,
  type Sample,
  samplesOf,
} from "../../../record/index.ts";
import { amountOf } from "../../../sampling/index.ts";
import { listing } from "../../../words/listing.ts";
import { type CaseRule, practice, verified } from "../../rule.ts";

interface Row extends Omit<CaseRule, "scope" | "family" | "check"> {
  /** The entry that is wrong, or missing. */
  readonly key: keyof Sample;
  readonly isWrong: (sample: Sample) => boolean;
  readonly says: (sample: Sample) => string;
}

const { formalin } = sampleRules;

const inAir = new Set(["transport-medium", "charcoal-medium", "viral-medium", "dry-swab"]);
const inAnything = new Set(["feed", "water", "bedding"]);
const anaerobes = ["clostrid*", "anaerob*"];

/** Millimetres of a fixed piece; undefined for what is fixed whole or in halves. */
const thicknessOf = ({ thickness, into, from }: Sample): number | undefined =>
  thickness === undefined || into !== "formalin" || formalin.thick_allowed.includes(from)
    ? undefined
    : quantity("length", thickness);

const twoPigs = {
  visit: "cases: [birch-2026-04-20-01, birch-2026-04-20-02]",
  others: ["case: birch-2026-04-20-02\npig: {tag: '902'}"],
};

const rows: readonly Row[] = [
  {
    id: "sample-organ-unknown",
    level: "error",
    summary: "A sample comes from an organ of the anatomy, or from blood, csf, faeces, feed or water.",
    protects: "A result that belongs to no organ cannot be set beside what was seen there.",
    lookAlike:
      "A place rather than an organ (left hock, apical lobe): from is the organ, locomotor.joints or respiratory.lungs, and site the place.",
    source: practice("names of the anatomy file of this project"),
    bad: { case: "samples: [{id: 01-A, from: respiratory.lung, into: chilled, for: [pcr]}]" },
    good: { case: "samples: [{id: 01-A, from: respiratory.lungs, into: chilled, for: [pcr]}]" },
    key: "from",
    isWrong: ({ from }) => !isMaterial(from),
    says({ from }) {
      const guess = nearestMaterial(from);
      return `there is no organ "${from}". ${guess === undefined ? "Write system.organ, such as respiratory.lungs, or blood, csf, faeces, feed or water." : `Did you mean ${guess}?`}`;
    },
  },
  {
    id: "sample-without-container",
    level: "warning",
    summary: "Every sample says what it was put into.",
    protects:
      "Without the container nobody can tell what the sample is still good for, and the laboratory may open it in vain.",
    lookAlike:
      "A whole carcass or head in a bag: into: chilled or frozen is its container as well. Feed, water and bedding travel in whatever is clean, and are passed.",
    source: verified(
      "common faults named by the Animal Health Laboratory, University of Guelph: wrong sample",
    ),
    bad: { case: "samples: [{id: 01-A, from: lymphoid.spleen, for: [pcr]}]" },
    good: {
      case: "samples: [{id: 01-A, from: lymphoid.spleen, into: chilled, for: [pcr]}, {id: 01-B, from: water, for: [archive]}]",
    },
    key: "into",
    isWrong: ({ into, from }) => into === undefined && !inAnything.has(from),
    says: ({ id, from }) =>
      `the container of ${id} is missing. Write into: ${from === "blood" ? "plain-tube, edta-tube" : from === "serum" || from === "csf" ? "plain-tube" : "formalin, chilled, dry-swab"} …`,
  },
  {
    id: "sample-without-test",
    level: "warning",
    summary: "Every sample names a test, or is kept for the archive.",
    protects:
      "A sample without a request is stored, billed or thrown away, and the question goes unanswered.",
    lookAlike: "A sample kept in case of need: for: [archive] is an answer, and no test is asked of it.",
    source: verified(
      "Animal Health Laboratory, University of Guelph: no plan for the samples is a common fault",
    ),
    bad: { case: "samples: [{id: 01-A, from: lymphoid.spleen, into: chilled}]" },
    good: { case: "samples: [{id: 01-A, from: lymphoid.spleen, into: chilled, for: [archive]}]" },
    key: "for",
    isWrong: ({ for: tests }) => tests === undefined,
    says: ({ id, from }) =>
      `no test is asked of ${id}. Write for: ${from === "blood" || from === "serum" ? "[serology], [pcr], [chemistry]" : "[pcr], [culture], [histology]"} …, or [archive] to keep it.`,
  },
  {
    id: "anaerobe-in-air",
    level: "warning",
    summary: "A swab for anaerobes travels in anaerobic medium.",
    protects:
      "Twenty minutes in air may kill the clostridia in question, and the plate then grows whatever likes air.",
    lookAlike: "A note that says that none are asked for (aerobic only, no anaerobes) is passed.",
    source: verified("J. Carr, post-mortem samples: anaerobic transport medium or a tied gut loop"),
    bad: {
      case: "samples: [{id: 01-A, from: locomotor.muscles, into: transport-medium, for: [culture], note: clostridia}]",
    },
    good: {
      case: "samples: [{id: 01-A, from: locomotor.muscles, into: anaerobic-medium, for: [culture], note: clostridia}]",
    },
    key: "into",
    isWrong: (sample) =>
      inAir.has(sample.into ?? "") && isFor(sample, "culture") && affirmed(sample.note, anaerobes).length > 0,
    says: ({ id, into }) =>
      `${id} is for the culture of anaerobes but in ${into?.replace("-", " ")}. Use anaerobic medium, a large chilled piece, or a tied loop of gut.`,
  },
  {
    id: "blood-chilled-before-clotting",
    level: "warning",
    summary: "Blood for serum clots before it is chilled.",
    protects: "Chilled too early it never clots properly, the red cells burst and the serum is useless.",
    lookAlike:
      "Blood that was meant to stay fluid: it belongs into an edta-tube or heparin-tube, and clotted is not asked of it.",
    source: verified("UK pig text, sampling and post-mortem examination: do not chill until clotted"),
    bad: { case: "samples: [{id: 01-A, from: blood, into: plain-tube, for: [serology], clotted: no}]" },
    good: { case: "samples: [{id: 01-A, from: blood, into: plain-tube, for: [serology], clotted: yes}]" },
    key: "clotted",
    isWrong: ({ into, clotted }) => into === "plain-tube" && (clotted === "no" || clotted === false),
    says: ({ id }) =>
      `${id} was chilled before it clotted. Leave the tube at room temperature for an hour or two first, or pour off the serum; if the pig or its pen mates are still alive, take it again.`,
  },
  {
    id: "toxicology-amount-small",
    level: "note",
    summary: "A sample for toxicology is large enough for the measurement.",
    protects: 'A shaving of liver is reported as "insufficient", and nothing is measured.',
    lookAlike:
      "One poison alone, such as sodium, takes less than the general search: accept the finding with what the laboratory said.",
    source: verified(
      "Oregon State Veterinary Diagnostic Laboratory: liver 20 g for selenium; other amounts from memory",
    ),
    bad: {
      case: "samples: [{id: 01-A, from: liver_pancreas.liver, into: frozen, for: [toxicology], amount: 8 g}, {id: 01-S, from: stomach.stomach_content, into: frozen, for: [archive]}]",
    },
    good: {
      case: "samples: [{id: 01-A, from: liver_pancreas.liver, into: frozen, for: [toxicology], amount: 40 g}, {id: 01-S, from: stomach.stomach_content, into: frozen, for: [archive]}]",
    },
    key: "amount",
    isWrong(sample) {
      if (sample.amount === undefined || !isFor(sample, "toxicology")) return false;
      const amount = amountOf(sample.amount);
      const least = amountOf(sampleRules.toxicology_amounts[sample.from]?.amount);
      return amount !== undefined && least !== undefined && amount < least;
    },
    says({ amount, from }) {
      const needed = sampleRules.toxicology_amounts[from];
      return `${amount} of ${materialTitle(from)} is too little for toxicology; ${needed?.for} needs ${needed?.amount}. Take more, or ask the laboratory what it can do with less.`;
    },
  },
  {
    id: "formalin-too-little",
    level: "warning",
    summary: "A piece of tissue is in at least ten parts of formalin.",
    protects: "In too little formalin the middle of the piece rots while its edge looks fixed.",
    lookAlike:
      "A pot whose formalin was changed on the next day: write the parts that it stands in now; from ten on nothing is said.",
    source: formalin.source,
    bad: {
      case: "samples: [{id: 01-A, from: lymphoid.spleen, into: formalin, for: [histology], formalin_ratio: 8}]",
    },
    good: {
      case: "samples: [{id: 01-A, from: lymphoid.spleen, into: formalin, for: [histology], formalin_ratio: 12}]",
    },
    key: "formalin_ratio",
    isWrong: ({ formalin_ratio: ratio }) =>
      ratio !== undefined && ratio < formalin.ratio && ratio >= formalin.ratio_least,
    says: ({ id, formalin_ratio: ratio }) =>
      `${id} has ${ratio} parts of formalin to one of tissue. Move it into ${formalin.ratio} parts or more, or cut the piece smaller.`,
  },
  {
    id: "formalin-far-too-little",
    level: "error",
    summary: "No piece of tissue is in less than five parts of formalin.",
    protects:
      "With less than five parts the piece is not fixed at all and spoils as if it had been left unfixed.",
    lookAlike:
      "A large organ carried home in little formalin and moved at once: formalin_ratio is that of the pot in which it fixes.",
    source: formalin.source,
    bad: {
      case: "samples: [{id: 01-A, from: lymphoid.spleen, into: formalin, for: [histology], formalin_ratio: 3}]",
    },
    good: {
      case: "samples: [{id: 01-A, from: lymphoid.spleen, into: formalin, for: [histology], formalin_ratio: 10}]",
    },
    key: "formalin_ratio",
    isWrong: ({ formalin_ratio: ratio }) => ratio !== undefined && ratio < formalin.ratio_least,
    says: ({ id, formalin_ratio: ratio }) =>
      `${id} has only ${ratio} parts of formalin to one of tissue and will not fix. Put it into ${formalin.ratio} parts now.`,
  },
  {
    id: "fixed-piece-too-thick",
    level: "warning",
    summary: "No piece for histology is thicker than 10 mm.",
    protects:
      "Formalin does not reach the middle in time: the middle rots, and it is the middle that is sectioned.",
    lookAlike:
      "A large piece with cuts through it at every half centimetre: thickness is that of a slice. Brain, spinal cord, eyes and joints may be fixed whole, and are not measured.",
    source: formalin.source,
    bad: {
      case: "samples: [{id: 01-A, from: lymphoid.spleen, into: formalin, for: [histology], thickness: 25 mm}]",
    },
    good: {
      case: "samples: [{id: 01-A, from: lymphoid.spleen, into: formalin, for: [histology], thickness: 4 mm}]",
    },
    key: "thickness",
    isWrong: (sample) => (thicknessOf(sample) ?? 0) > formalin.thickness_most,
    says: ({ id, thickness }) =>
      `${id} is ${thickness} thick and will rot in the middle. Slice it to ${formalin.thickness} mm, or slit it so that formalin gets in.`,
  },
  {
    id: "gut-piece-closed",
    level: "warning",
    summary: "A piece of gut is slit or snipped open before it goes into formalin.",
    protects:
      "Formalin does not cross the wall fast enough: the mucosa, which is what matters, rots in a closed tube.",
    lookAlike:
      "A loop filled with formalin through a needle: formalin is at the mucosa, so write lumen_opened: yes and say how in the note.",
    source: verified("Animal Health Laboratory, University of Guelph; field manual, 3rd ed., p. 517"),
    bad: {
      case: "samples: [{id: 01-A, from: intestine.ileum, into: formalin, for: [histology], at: 2026-04-20T09:40, lumen_opened: no}]",
    },
    good: {
      case: "samples: [{id: 01-A, from: intestine.ileum, into: formalin, for: [histology], at: 2026-04-20T09:40, lumen_opened: yes}]",
    },
    key: "lumen_opened",
    isWrong: (sample) =>
      (sample.lumen_opened === "no" || sample.lumen_opened === false) &&
      isFixed(sample) &&
      isGut(sample.from),
    says: ({ id }) =>
      `${id} was fixed as a closed tube. Snip one end or slit it lengthwise now, so that formalin reaches the mucosa.`,
  },
  {
    id: "pigs-pooled-in-formalin",
    level: "warning",
    summary: "A formalin pot holds tissue from one pig only.",
    protects: "Pieces of two pigs in one pot cannot be told apart under the microscope.",
    lookAlike:
      "Cassettes of several pigs, each marked, in one jar: accept the finding with that reason, or write a sample for each cassette.",
    source: verified("Animal Health Laboratory, University of Guelph: one jar for each pig"),
    bad: {
      case: "samples: [{id: 01-A, from: lymphoid.spleen, into: formalin, for: [histology], pooled_with: [birch-2026-04-20-02]}]",
      ...twoPigs,
    },
    good: {
      case: "samples: [{id: 01-A, from: lymphoid.spleen, into: chilled, for: [pcr], pooled_with: [birch-2026-04-20-02]}]",
      ...twoPigs,
    },
    key: "pooled_with",
    isWrong: ({ into, pooled_with: pool }) => pool !== undefined && into === "formalin",
    says: ({ id, pooled_with: pool = [] }) =>
      `formalin pot ${id} also holds tissue from ${listing(pool)}. Use one pot for each pig; several organs of one pig may share it.`,
  },
  {
    id: "gut-pooled-across-pigs",
    level: "warning",
    summary: "Fresh gut from several pigs is not pooled.",
    protects: "One heavily infected pig answers for all, and its agent is blamed for the lesion of another.",
    lookAlike:
      "Faeces or rectal swabs pooled for PCR are another matter, and passed: write from: faeces, or the swab as what it is.",
    source: practice(
      "Animal pathology (guide for senders of samples; author and year not noted); pooling of faeces for PCR is another matter",
    ),
    bad: {
      case: "samples: [{id: 01-A, from: intestine.ileum, into: chilled, for: [culture], pooled_with: [birch-2026-04-20-02]}]",
      ...twoPigs,
    },
    good: {
      case: "samples: [{id: 01-A, from: faeces, into: chilled, for: [pcr], pooled_with: [birch-2026-04-20-02]}]",
      ...twoPigs,
    },
    key: "pooled_with",
    isWrong: (sample) => sample.pooled_with !== undefined && isFreshTissue(sample) && isGut(sample.from),
    says: ({ id, pooled_with: pool = [] }) =>
      `gut ${id} shares its bag with ${listing(pool)}. Bag each pig's gut separately; the laboratory can still pool for PCR.`,
  },
];

/** A finding stands at the entry that is wrong, or at the sample where the entry is missing. */
export const sampleEntries: readonly CaseRule[] = rows.map(({ key, isWrong, says, ...text }) => ({
  ...text,
  scope: "case",
  family: "sampling",
  check(one, report) {
    if (one.record.samples === undefined) return;
    for (const { sample, index } of samplesOf(one))
      if (isWrong(sample))
        report(
          `samples[${index}].${key}: ${says(sample)}`,
          sample[key] === undefined ? ["samples", index] : ["samples", index, key],
        );
  },
}));
