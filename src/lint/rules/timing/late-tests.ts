/** Tests that come too late for their tissue, by kind of test. */
import { type Case, formatPath, isUnborn, type Path } from "../../../cases/index.ts";
import { autolysis } from "../../../knowledge/index.ts";
import { type LateSample, lateness, lateSamples } from "../../../sampling/index.ts";
import { grouped } from "../../../words/grouped.ts";
import { listing } from "../../../words/listing.ts";
import type { CaseRule, Report } from "../../rule.ts";

interface Row extends Omit<CaseRule, "scope" | "family" | "check"> {
  /** The kind of test in autolysis.yaml. */
  readonly kind: string;
}

const rows: readonly Row[] = [
  {
    id: "histology-late",
    level: "warning",
    summary: "Tissue for histology is fixed before autolysis hides the lesion.",
    protects:
      "Autolysis takes the nuclei of liver, kidney and brain first; necrosis and autolysis then look alike.",
    lookAlike:
      "Skin, heart or lung of a cool carcass, which keep longer: the limits are those of the softest organs, so send it and accept the finding.",
    source: autolysis.source,
    bad: {
      case: "death: {at: 2026-04-19T19:10}\nopened: {at: 2026-04-20T09:40, ambient: 14 °C, state: fresh, note: lay in the cold passage overnight}\nsamples: [{id: 01-A, from: liver_pancreas.liver, into: formalin, for: [histology], at: 2026-04-20T09:50}]",
    },
    good: {
      case: "death: {at: 2026-04-19T23:10}\nopened: {at: 2026-04-20T09:40, ambient: 14 °C, state: fresh}\nsamples: [{id: 01-A, from: liver_pancreas.liver, into: formalin, for: [histology], at: 2026-04-20T09:50}]",
    },
    kind: "histology",
  },
  {
    id: "culture-late",
    level: "warning",
    summary: "Samples for culture and virus isolation are taken before gut bacteria have spread.",
    protects:
      "Hours after death gut bacteria are in liver, spleen and blood, and the primary agent is overgrown.",
    lookAlike:
      "Bone marrow, or a pure growth of a primary germ, still counts: send it, and accept the finding with what the laboratory was told.",
    source: autolysis.source,
    bad: {
      case: "death: {at: 2026-04-19T19:10}\nopened: {at: 2026-04-20T09:40, ambient: 14 °C, state: fresh, note: lay in the cold passage overnight}\nsamples: [{id: 01-A, from: liver_pancreas.liver, into: chilled, for: [culture], at: 2026-04-20T09:50}]",
    },
    good: {
      case: "death: {at: 2026-04-19T23:10}\nopened: {at: 2026-04-20T09:40, ambient: 14 °C, state: fresh}\nsamples: [{id: 01-A, from: liver_pancreas.liver, into: chilled, for: [culture], at: 2026-04-20T09:50}]",
    },
    kind: "culture",
  },
  {
    id: "pcr-late",
    level: "warning",
    summary: "Samples for PCR are taken while nucleic acid lasts.",
    protects: "RNA goes first: a negative PCR from an old carcass does not rule out the virus.",
    lookAlike:
      "A carcass that was chilled from the first hour: write the temperature of the cold room under opened.ambient, and a week is allowed.",
    source: autolysis.kinds.pcr?.source ?? autolysis.source,
    bad: {
      case: "death: {at: 2026-04-17T19:10}\nopened: {at: 2026-04-20T09:40, ambient: 14 °C, state: moderate-autolysis, note: lay in the cold passage overnight}\nsamples: [{id: 01-A, from: liver_pancreas.liver, into: frozen, for: [pcr], at: 2026-04-20T09:50}]",
    },
    good: {
      case: "death: {at: 2026-04-19T10:10}\nopened: {at: 2026-04-20T09:40, ambient: 14 °C, state: moderate-autolysis, note: lay in the cold passage overnight}\nsamples: [{id: 01-A, from: liver_pancreas.liver, into: frozen, for: [pcr], at: 2026-04-20T09:50}]",
    },
    kind: "pcr",
  },
  {
    id: "toxicology-late",
    level: "warning",
    summary: "Samples for toxicology are taken before the poison is gone.",
    protects:
      "Volatile and unstable poisons vanish and new substances form; a low value then proves nothing.",
    lookAlike:
      "Metals and most moulds' poisons stay for weeks: accept the finding with the name of the poison that is looked for.",
    source: autolysis.source,
    bad: {
      case: "death: {at: 2026-04-17T19:10}\nopened: {at: 2026-04-20T09:40, ambient: 14 °C, state: moderate-autolysis, note: lay in the cold passage overnight}\nsamples: [{id: 01-A, from: liver_pancreas.liver, into: frozen, for: [toxicology], at: 2026-04-20T09:50}, {id: 01-S, from: stomach.stomach_content, into: frozen, for: [archive]}]",
    },
    good: {
      case: "death: {at: 2026-04-19T10:10}\nopened: {at: 2026-04-20T09:40, ambient: 14 °C, state: moderate-autolysis, note: lay in the cold passage overnight}\nsamples: [{id: 01-A, from: liver_pancreas.liver, into: frozen, for: [toxicology], at: 2026-04-20T09:50}, {id: 01-S, from: stomach.stomach_content, into: frozen, for: [archive]}]",
    },
    kind: "toxicology",
  },
];

/** Samples that are late alike have one cause and get one line. */
export const lateTests: readonly CaseRule[] = rows.map(({ kind, ...text }) => ({
  ...text,
  scope: "case",
  family: "timing",
  trustsTimes: true,
  check(one, report) {
    const found = lateSamples(one, kind, ["reduced", "doubtful"]);
    if (found.length === 0) return;
    const alike = grouped(found, (sample) => `${lateness(one, sample)} ${sample.late[0]?.worth}`);
    for (const group of alike.values()) reportAlike(one, report, kind, group);
  },
}));

/** How late they were, what the limit is, what the tests are still worth. */
function reportAlike(one: Case, report: Report, kind: string, found: readonly LateSample[]): void {
  const [first] = found;
  if (first === undefined) return;
  const single = found.length === 1;
  const path: Path = single ? ["samples", first.index, "for"] : ["samples"];
  const tests = listing([...new Set(found.flatMap(({ late }) => late.map(({ test }) => test)))]);
  report(
    `${formatPath(path)}: ${listing(found.map(({ sample }) => sample.id))} ${single ? "was" : "were"} taken ${lateness(one, first)}; the value of ${tests} is ${first.late[0]?.worth}. Send ${single ? "it" : "them"} all the same (${autolysis.kinds[kind]?.still}), tell the laboratory, and add ${isUnborn(one.ageClass) ? "a fresher fetus if you can get one" : "a freshly killed pig"}.`,
    path,
    single ? "value" : "key",
  );
}
