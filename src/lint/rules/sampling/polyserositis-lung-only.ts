import type { Finding } from "../../../cases/index.ts";
import { shippedSet } from "../../../knowledge/index.ts";
import { findingsOf, isAmong, isForAgents, samplesOf } from "../../../record/index.ts";
import { type CaseRule, verified } from "../../rule.ts";

const isFibrinous = ({ process, exudate }: Finding): boolean =>
  process === "fibrin" || exudate === "fibrinous" || exudate === "fibrinosuppurative";
/** Pleura and pleural space are one place. */
const cavity: Readonly<Record<string, string>> = { "respiratory.pleura": "serosa.pleural_space" };

/** Those that the set for septicaemia swabs. */
const serosae: readonly string[] = shippedSet("septicaemia")
  .samples.filter(({ into }) => into === "transport-medium")
  .map(({ from }) => from);

export const polyserositisLungOnly: CaseRule = {
  id: "polyserositis-lung-only",
  scope: "case",
  family: "sampling",
  level: "warning",
  silent: "authority",
  summary: "In polyserositis the fibrin itself is sampled, not the lung alone.",
  protects:
    "Bacteria in the lung are poor evidence of what inflamed the serosae: most of them live there in healthy pigs too.",
  lookAlike:
    "Fibrin taken with the lung it lay on: write that sample as from: respiratory.pleura, and it counts; so do the heart with its fibrin and the whole carcass.",
  source: verified("BMC Veterinary Research 2023;19:268 (doi 10.1186/s12917-023-03807-w)"),
  bad: {
    case: "serosa: {peritoneum: [{process: fibrin, distribution: multifocal, extent: 20 %}]}\ncardiovascular: {pericardium: [{process: fibrin, distribution: diffuse, extent: 60 %}]}\nsamples: [{id: 01-A, from: respiratory.lungs, into: chilled, for: [culture]}]",
  },
  good: {
    case: "serosa: {peritoneum: [{process: fibrin, distribution: multifocal, extent: 20 %}]}\ncardiovascular: {pericardium: [{process: fibrin, distribution: diffuse, extent: 60 %}]}\nsamples: [{id: 01-A, from: respiratory.lungs, into: chilled, for: [culture]}, {id: 01-B, from: serosa.peritoneum, into: charcoal-medium, for: [culture]}]",
  },
  check(one, report) {
    if (one.record.samples === undefined) return;
    const agents = samplesOf(one).filter(({ sample }) => isForAgents(sample));
    const lung = agents.find(({ sample }) => sample.from === "respiratory.lungs");
    if (lung === undefined) return;
    const inflamed = new Set(
      findingsOf(one)
        .filter(({ finding }) => isFibrinous(finding))
        .map(({ organ }) => cavity[organ.id] ?? organ.id)
        .filter((organ) => serosae.includes(organ)),
    );
    if (inflamed.size < 2) return;
    if (
      agents.some(
        ({ sample }) =>
          sample.from === "csf" ||
          isAmong(sample.from, [...serosae, "respiratory.pleura", "serosa", "cardiovascular", "carcass"]),
      )
    )
      return;
    report(
      `samples[${lung.index}].from: there is fibrin on ${inflamed.size} serosae, but only the lung was sampled for agents. Swab the fibrin on pericardium, peritoneum, pleura, joint or meninges as well.`,
      ["samples", lung.index, "from"],
    );
  },
};
