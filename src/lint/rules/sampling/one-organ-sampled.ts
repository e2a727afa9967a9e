import { sampleRules } from "../../../knowledge/index.ts";
import { findingsOf, samplesOf } from "../../../record/index.ts";
import { listing } from "../../../words/listing.ts";
import { type CaseRule, verified } from "../../rule.ts";

export const oneOrganSampled: CaseRule = {
  id: "one-organ-sampled",
  scope: "case",
  family: "sampling",
  level: "note",
  silent: "authority",
  summary: "When several organs have lesions, more than one of them is sampled.",
  protects:
    "Lesions in several systems raise the question of what spread through the pig, and one organ cannot answer it.",
  lookAlike:
    "Lesions of one cause that the eye can see, such as wounds: say so by accepting the note; a second organ in the parcel answers it.",
  source: verified(
    "the lung is the most submitted tissue though poor for systemic agents (BMC Veterinary Research 2023;19:268); numbers of this project",
  ),
  bad: {
    case: "lymphoid: {spleen: [{process: infarct, distribution: multifocal, number: 6, severity: moderate}]}\nliver_pancreas: {liver: [{process: necrosis, distribution: random, number: 9, colour: white, severity: moderate}]}\nsamples: [{id: 01-A, from: liver_pancreas.liver, into: formalin, for: [histology]}]",
  },
  good: {
    case: "lymphoid: {spleen: [{process: infarct, distribution: multifocal, number: 6, severity: moderate}]}\nliver_pancreas: {liver: [{process: necrosis, distribution: random, number: 9, colour: white, severity: moderate}]}\nsamples: [{id: 01-A, from: liver_pancreas.liver, into: formalin, for: [histology]}, {id: 01-B, from: lymphoid.spleen, into: chilled, for: [culture]}]",
  },
  check(one, report) {
    if (one.record.samples === undefined) return;
    const sampled = new Set(samplesOf(one).map(({ sample }) => sample.from));
    if (sampled.size !== 1) return;
    const lesions = new Map(
      findingsOf(one)
        .filter(({ finding }) => finding.severity === "moderate" || finding.severity === "marked")
        .map(({ organ }) => [organ.id, organ]),
    );
    const organs = [...lesions.values()];
    const systems = new Set(organs.map(({ system }) => system));
    if (organs.length < sampleRules.sets.lesions_in_organs || systems.size < 2) return;
    report(
      `samples: ${listing(organs.map(({ definition }) => definition.title.toLowerCase()))} have lesions, but only ${[...sampled].join()} was sampled. Add the others, each in a bag of its own.`,
      ["samples"],
      "key",
    );
  },
};
