/** What the interview asks for the laboratory: the samples of each step and of marked lesions, and what it all adds up to. */
import { type Case, valueAt } from "../cases/index.ts";
import { containerNames, testNames } from "../explain/sampling.ts";
import { wordsAt } from "../fix/probe.ts";
import { autolysis, organById } from "../knowledge/index.ts";
import type { NecropsyStep } from "../knowledge/knife.ts";
import {
  findingsOf,
  isLesion,
  isSampled,
  markedLesions,
  materialTitle,
  processOf,
  type Sample,
  sampleAt,
  samplesOf as taken,
} from "../record/index.ts";
import { samplesWanted } from "../sheet/index.ts";
import { capital } from "../words/listing.ts";
import type { SampleQuestion, Session, ValueQuestion } from "./kinds.ts";

/** What is passed over as soon as somebody said that samples are taken. */
export const areTaken = "samples are taken";

const isSampling = (one: Case, { skipped }: Session): boolean =>
  taken(one).length > 0 || skipped.has(areTaken);

/** Whether samples are taken, before the first; then each that is due in a step, for this is its moment. */
export function* samplesOf(one: Case, step: NecropsyStep, session: Session): Generator<SampleQuestion> {
  const due = samplesDue(one);
  const now = due.filter((sample) => sample.step === step);
  if (now.length === 0) return;
  if (!isSampling(one, session)) yield whether(`${due.length} due`, step);
  else for (const { step: at, ...sample } of now) yield sampleQuestion(one, sample, at);
}

const whether = (why: string, step?: NecropsyStep): SampleQuestion => ({
  kind: "sample",
  id: "samples",
  step,
  text: `Are samples taken from this pig (${why})?`,
});

/** By protocol, age and signs; a pig for comparison is opened for its organs. */
const samplesDue = (one: Case): ReturnType<typeof samplesWanted> =>
  one.record.selection?.basis === "comparison"
    ? []
    : samplesWanted(one).filter(
        ({ from, into }) => !taken(one).some(({ sample }) => sample.from === from && sample.into === into),
      );

/** The edge of each marked lesion: a piece in formalin and one chilled, unless the organ was sampled otherwise. */
export function* lesionSamplesOf(one: Case, session: Session): Generator<SampleQuestion> {
  const organs = markedLesions(one)
    .filter(
      ({ organ, finding }) => processOf(finding).laboratory !== "no" && organ.definition.kind !== "content",
    )
    .map(({ organ }) => organ);
  for (const organ of new Set(organs)) {
    const edges = taken(one).filter(({ sample }) => sample.from === organ.id && sample.site === edge);
    if (edges.length === 0 && isSampled(one, organ)) continue;
    if (!isSampling(one, session)) return yield whether("its marked lesion has none");
    for (const into of ["formalin", "chilled"])
      if (!edges.some(({ sample }) => sample.into === into))
        yield sampleQuestion(one, {
          from: organ.id,
          into,
          ...(into === "formalin" && { for: ["histology"] }),
          site: edge,
        });
  }
}

const edge = "edge of lesion";

interface Wanted {
  readonly from: string;
  readonly into: string;
  readonly for?: readonly string[];
  readonly site?: string;
}

function sampleQuestion(one: Case, sample: Wanted, step?: NecropsyStep): SampleQuestion {
  const { from, into, for: tests, site } = sample;
  const entry = { id: nextId(one), ...sample };
  const samples = one.record.samples ?? [];
  const what = `${site === undefined ? "" : `${site}, `}${containerNames([into])}`;
  return {
    kind: "sample",
    id: `sample ${from} ${into}`,
    step,
    text: `Taken: ${titleOf(from)}, ${what}${tests === undefined ? "" : `, for ${testNames(tests)}`}?`,
    edit: samples.length === 0 ? [["samples"], [entry]] : [["samples", samples.length], entry],
  };
}

const titleOf = (from: string): string => capital(organById(from)?.definition.title ?? materialTitle(from));

/** `03-B`: the number of the pig in its visit, and the first letter that none of its samples has. */
function nextId(one: Case): string {
  const pig = /-(\d+)$/.exec(one.id)?.[1] ?? one.id;
  const known = new Set(taken(one).map(({ sample }) => sample.id));
  for (let at = 0; ; at++) {
    const id = `${pig}-${String.fromCharCode(65 + (at % 26))}${at < 26 ? "" : Math.floor(at / 26)}`;
    if (!known.has(id)) return id;
  }
}

/** What a laboratory must know of each sample: its container, its tests, and the time of gut, which spoils in minutes. */
export function* sampleDetailsOf(one: Case): Generator<ValueQuestion> {
  for (const { sample, index } of taken(one)) {
    const { id, from, into, for: tests } = sample;
    const ask = (key: keyof Sample, text: string, more: Partial<ValueQuestion>): ValueQuestion => ({
      kind: "value",
      id: `sample ${index} ${key}`,
      text: `${id}, ${titleOf(from)}: ${text}`,
      paths: [["samples", index, key]],
      words: [],
      ...more,
    });
    if (into === undefined) yield ask("into", "into what", wordsAt("case", ["samples", 0, "into"]));
    if (tests === undefined)
      yield ask("for", "for which tests, with commas between them; archive to keep it", {
        words: wordsAt("case", ["samples", 0, "for", 0]).words,
        between: ",",
      });
    if (into === "formalin" && autolysis.gut.includes(from) && sampleAt(one, sample) === undefined)
      yield ask("at", "when it went into formalin", { example: "0935" });
  }
}

/** What the lesions add up to, organ by organ, and what the cause rests on so far. */
export function* diagnosisOf(one: Case): Generator<ValueQuestion> {
  if (one.protocol.observations === "optional" || !findingsOf(one).some(({ finding }) => isLesion(finding)))
    return;
  const path = ["diagnosis", "morphologic"];
  if (valueAt(one.record, path) === undefined)
    yield {
      kind: "value",
      id: path.join("."),
      text: "Morphologic diagnosis: the organ, a colon, the lesion, how it lies, how old, how severe; with ; between several",
      paths: [path],
      words: [],
      example: "Lungs: bronchopneumonia, cranioventral, subacute, moderate",
      between: ";",
    };
  else if (valueAt(one.record, ["diagnosis", "basis"]) === undefined)
    yield {
      kind: "value",
      id: "diagnosis.basis",
      text: "What the cause rests on so far",
      paths: [["diagnosis", "basis"]],
      ...wordsAt("case", ["diagnosis", "basis"]),
    };
}
