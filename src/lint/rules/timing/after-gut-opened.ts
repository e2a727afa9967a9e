/** Samples that were taken after the gut was opened: one cause, so one line for all of them. */
import { type Case, formatPath, isAfter, type Path } from "../../../cases/index.ts";
import {
  doubtfulSamples,
  type IndexedSample,
  isAmong,
  isContaminated,
  isFixed,
  isFor,
  isForAgents,
  isGut,
  isSampledAfter,
  isTissue,
  type Sample,
  samplesOf,
  soundStepAt,
} from "../../../record/index.ts";
import { listing } from "../../../words/listing.ts";
import { type CaseRule, fromMemory } from "../../rule.ts";

interface Row extends Omit<CaseRule, "scope" | "family" | "check"> {
  /** Whether an opened gut spoils a sample like this one. */
  readonly isSpoilt: (sample: Sample) => boolean;
  /** Such as ` for culture`. */
  readonly what: string;
  readonly advice: (late: readonly IndexedSample[]) => string;
}

/** From inside the carcass: tissue, or blood, which is then drawn from the heart. */
const isFromInside = ({ from }: Sample): boolean => isTissue(from) || from === "blood";

/** Closed by bone or capsule until they are sampled: no gut comes near. */
const enclosed = ["nervous", "locomotor.joints", "locomotor.bone_marrow"];

const rows: readonly Row[] = [
  {
    id: "culture-after-gut-opened",
    level: "warning",
    summary: "Culture samples of other organs are taken before the gut is opened.",
    protects: "Gut bacteria on knife and gloves overgrow what was in the organ.",
    lookAlike:
      "Marrow, brain or a joint, which were closed until then, are passed; swabs of gut, skin, nose or tonsil are not asked about.",
    source: fromMemory("standard pathology texts (from memory): contamination rises with each cut"),
    bad: {
      case: "steps: {gut_opened: 2026-04-20T10:00}\nsamples: [{id: 01-A, from: lymphoid.spleen, into: chilled, for: [culture], at: 2026-04-20T10:20}]",
    },
    good: {
      case: "steps: {gut_opened: 2026-04-20T10:00}\nsamples: [{id: 01-A, from: lymphoid.spleen, into: chilled, for: [culture], at: 2026-04-20T09:50}, {id: 01-B, from: intestine.ileum, into: chilled, for: [culture], at: 2026-04-20T10:20}]",
    },
    // Nothing grows from formalin, sterile or not; culture-in-formalin says so.
    isSpoilt: (sample) =>
      isFor(sample, "culture") &&
      !isFixed(sample) &&
      isFromInside(sample) &&
      !isContaminated(sample.from) &&
      !isAmong(sample.from, enclosed),
    what: " for culture",
    advice: (late) =>
      late.every(({ sample }) => sample.from === "blood")
        ? "Note the contamination; from the next pig draw blood before the gut is opened."
        : "Sear the surface and swab the depth of a piece that was not cut, or note the contamination; next time open the gut last.",
  },
  {
    id: "gut-opened-early",
    level: "note",
    summary: "The gut is opened after the fresh samples of the other organs are taken.",
    protects:
      "Gut content carries nucleic acid of whatever the pig swallowed, and PCR finds it on the next organ.",
    lookAlike:
      "A sample taken with fresh gloves and a fresh knife: the hour cannot show that, so accept the note.",
    source: fromMemory("opening the lumen comes last: standard pathology texts (from memory)"),
    bad: {
      case: "steps: {gut_opened: 2026-04-20T10:00}\nsamples: [{id: 01-A, from: lymphoid.spleen, into: chilled, for: [pcr], at: 2026-04-20T10:20}]",
    },
    good: {
      case: "steps: {gut_opened: 2026-04-20T10:00}\nsamples: [{id: 01-A, from: lymphoid.spleen, into: formalin, for: [histology], at: 2026-04-20T10:20}]",
    },
    isSpoilt: (sample) =>
      isForAgents(sample) && !isFor(sample, "culture") && isTissue(sample.from) && !isGut(sample.from),
    what: "",
    advice: () => "Change gloves and knife before taking fresh samples; next time open the gut last.",
  },
];

const sterileAfterGutOpened: CaseRule = {
  id: "sterile-after-gut-opened",
  scope: "case",
  family: "timing",
  level: "error",
  summary: "Sterile swabs and tissue are taken before the gut is opened.",
  protects: "Once the gut is open its bacteria are on knife, gloves and every surface.",
  lookAlike:
    "Two times written to the minute by memory: if the order is certain, correct the one that was guessed; a bare day contradicts nothing.",
  source: fromMemory("standard pathology texts (from memory)"),
  bad: { case: "steps: {gut_opened: 2026-04-20T10:00, sterile_samples: 2026-04-20T10:15}\nsamples: " },
  good: { case: "steps: {sterile_samples: 2026-04-20T09:50, gut_opened: 2026-04-20T11:00}\nsamples: " },
  check(one, report) {
    const { steps } = one.record;
    if (steps?.sterile_samples === undefined || !isSterileStepLate(one)) return;
    const ids = takenAfter(one, (sample) => isForAgents(sample) && isFromInside(sample)).map(
      ({ sample }) => sample.id,
    );
    const which = ids.length === 0 ? "they are not sterile" : `${listing(ids)} may carry gut bacteria`;
    report(
      `steps.sterile_samples: sterile samples were taken (${steps.sterile_samples}) after the gut was opened (${steps.gut_opened}). Tell the laboratory that ${which}; from the next pig take them as soon as the cavities are open.`,
      ["steps", "sterile_samples"],
    );
  },
};

/** The finding on the step of the sterile samples speaks for the single samples. */
export const afterGutOpened: readonly CaseRule[] = [
  sterileAfterGutOpened,
  ...rows.map(
    ({ isSpoilt, what, advice, ...text }): CaseRule => ({
      ...text,
      scope: "case",
      family: "timing",
      check(one, report) {
        if (one.record.steps?.gut_opened === undefined) return;
        const late = takenAfter(one, isSpoilt);
        const [first] = late;
        if (first === undefined || isSterileStepLate(one)) return;
        const single = late.length === 1;
        const path: Path = single ? ["samples", first.index, "at"] : ["samples"];
        report(
          `${formatPath(path)}: ${listing(late.map(({ sample }) => sample.id))}${what} ${single ? "was" : "were"} taken after the gut was opened (${one.record.steps.gut_opened}). ${advice(late)}`,
          path,
          single ? "value" : "key",
        );
      },
    }),
  ),
];

/** Samples of a kind taken after the gut was opened. */
function takenAfter(one: Case, isAffected: (sample: Sample) => boolean): IndexedSample[] {
  if (soundStepAt(one, "gut_opened") === undefined) return [];
  const doubtful = doubtfulSamples(one);
  return samplesOf(one).filter(
    ({ sample, index }) =>
      isAffected(sample) && isSampledAfter(one, sample, "gut_opened") && !doubtful.includes(index),
  );
}

function isSterileStepLate(one: Case): boolean {
  const [opened, sterile] = [soundStepAt(one, "gut_opened"), soundStepAt(one, "sterile_samples")];
  return opened !== undefined && sterile !== undefined && isAfter(sterile, opened);
}
