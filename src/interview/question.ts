/** What the interview asks next of a case: a pure function of the case, the knowledge and what was passed over. */
import { openAlarms } from "../alarms/index.ts";
import { type Case, formatPath, type OrganState, type Path, pathOf, valueAt } from "../cases/index.ts";
import { wordsAt } from "../fix/probe.ts";
import { type Fact, type PlacedOrgan, systemTitle } from "../knowledge/index.ts";
import { type NecropsyStep, necropsySteps } from "../knowledge/knife.ts";
import { cannotBe } from "../lint/rules/description/process-impossible.ts";
import {
  askedOfNormal,
  findingsOf,
  isLeftOut,
  isUnasked,
  type MissingObservation,
  measuresOf,
  missingObservations,
  missingTitle,
  type PlacedFinding,
  processOf,
  requiredFacts,
  saysHowMuch,
} from "../record/index.ts";
import { grouped } from "../words/grouped.ts";
import { capital } from "../words/listing.ts";
import type { OrgansQuestion, Question, Session, ValueQuestion } from "./kinds.ts";
import { diagnosisOf, lesionSamplesOf, sampleDetailsOf, samplesOf } from "./laboratory.ts";

export function nextQuestion(one: Case, session: Session): Question | undefined {
  for (const question of questions(one, session)) {
    if (question.kind === "organs") {
      const left = without(question, session);
      if (left !== undefined) return left;
    } else if (!session.skipped.has(question.id)) return question;
  }
  return undefined;
}

/** Whether an alarm stands for which nothing more is cut. */
export const mustStop = (one: Case): boolean =>
  openAlarms(one).some(({ pattern }) => pattern.level !== "exclude");

/** Of this pig, or of another one of its visit. */
export const isStopped = (one: Case, session: Session): boolean => session.isStopped || mustStop(one);

function without(question: OrgansQuestion, { skipped, wanted }: Session): OrgansQuestion | undefined {
  const left = (organs: readonly PlacedOrgan[]): readonly PlacedOrgan[] =>
    organs.filter(({ id }) => !skipped.has(id));
  const must = left(question.must);
  if (must.length === 0 && !wanted) return undefined;
  const besides = left(question.wanted);
  return must.length + besides.length === 0 ? undefined : { ...question, must, wanted: besides };
}

function* questions(one: Case, session: Session): Generator<Question> {
  const blank = requiredFacts(one).filter(({ path }) => valueAt(one.record, path) === undefined);
  const signs = (look: string) => blank.filter(({ id }) => id.startsWith(`alarm_check.${look}.`));
  const facts = blank.filter(({ id }) => !id.startsWith("alarm_check."));
  // Alarm signs come before everything else: what follows depends on them.
  for (const { id, path, fact } of signs("before_knife")) yield factQuestion(id, path, fact);
  const isClosed = isStopped(one, session);
  if (!isClosed) yield* detailsOf(one, session);
  if (one.record.selection?.basis === undefined) yield selectionQuestion("basis", "Why this pig");
  if (one.record.selection?.signs === undefined)
    yield {
      ...selectionQuestion("signs", "Signs in life, with commas between them; none of a healthy pig"),
      between: ",",
    };
  for (const { id, path, fact } of facts.filter(({ fact }) => fact.later !== true))
    yield factQuestion(id, path, fact);
  if (isClosed) return;
  const atKnife = signs("at_knife");
  for (const step of necropsySteps) {
    for (const { id, path, fact } of facts)
      if (fact.later === true && stepOfFact(id) === step.id) yield factQuestion(id, path, fact, step);
    for (const { id, path, fact } of atKnife)
      if (isFirstFor(fact, step, one)) yield factQuestion(id, path, fact, step);
    yield* organsOf(one, step);
    yield* samplesOf(one, step, session);
  }
  // What no step holds must not be lost.
  for (const { id, path, fact } of [...facts.filter(({ fact: { later } }) => later === true), ...atKnife])
    yield factQuestion(id, path, fact);
  yield* lesionSamplesOf(one, session);
  yield* diagnosisOf(one);
}

/** The pig is weighed and measured before it is cut; what is said of the opening is known when it is open. */
const stepOfFact = (id: string): string => (id.startsWith("opened.") ? "cavities-opened" : "outside");

/** Whether an alarm sign is first met in this step. */
function isFirstFor({ due_with: organs = [] }: Fact, step: NecropsyStep, { due }: Case): boolean {
  const meets = (one: NecropsyStep): boolean =>
    one.organs.some((organ) => due.includes(organ) && isNamed(organ, organs));
  return necropsySteps.find(meets) === step;
}

const isNamed = ({ id, system }: PlacedOrgan, names: readonly string[]): boolean =>
  names.includes(id) || names.includes(system);

function factQuestion(id: string, path: Path, fact: Fact, step?: NecropsyStep): ValueQuestion {
  const example = fact.write
    .slice(fact.write.indexOf(":") + 1)
    .replaceAll('"', "")
    .trim();
  const text = id.startsWith("alarm_check.")
    ? `${capital(fact.title.replace(/^whether you saw /, ""))}?`
    : capital(fact.title);
  return { kind: "value", id, step, text, paths: [path], ...wordsAt("case", path), example };
}

function selectionQuestion(key: string, text: string): ValueQuestion {
  const path = ["selection", key];
  return {
    kind: "value",
    id: path.join("."),
    text,
    paths: [path],
    ...wordsAt("case", key === "signs" ? [...path, 0] : path),
  };
}

/** The organs of a step of which nothing is said, system by system; one of which more must be said is asked alone. */
function* organsOf(one: Case, step: NecropsyStep): Generator<OrgansQuestion> {
  const left = step.organs.filter((organ) => one.due.includes(organ) && isLeftOut(one, organ));
  const groups = new Map<string, PlacedOrgan[]>();
  for (const organ of left) {
    const name = askedOfNormal(one, organ).length > 0 ? organ.id : organ.system;
    groups.set(name, [...(groups.get(name) ?? []), organ]);
  }
  for (const [name, organs] of groups)
    yield {
      kind: "organs",
      id: `${step.id} ${name}`,
      step,
      title: systemTitle(organs[0]?.system ?? name),
      must: organs.filter((organ) => isAsked(one, organ)),
      wanted: organs.filter((organ) => !isAsked(one, organ)),
    };
}

/** Whether an organ must be seen, or stands in the file to be filled in: in healthy pigs what the ill ones have. */
const isAsked = (one: Case, organ: PlacedOrgan): boolean =>
  one.must.has(organ) || valueAt(one.document.value, organ.path) !== undefined;

/** What is still to be said of organs of which something stands in the file. */
function* detailsOf(one: Case, session: Session): Generator<Question> {
  yield* reasonsOf(one);
  const { telling } = session;
  for (const placed of findingsOf(one)) yield* fieldsOf(one, placed, placed.organ === telling);
  if (telling !== undefined) {
    const { findings } = one.organ(telling);
    if (findings.length > 0)
      yield { kind: "more", id: `more ${telling.id} ${findings.length}`, organ: telling };
  }
  yield* sampleDetailsOf(one);
  for (const missing of missingObservations(one)) {
    const { organ, path } = missing;
    // What the word for a whole system does not answer is asked of the organ.
    if (path.includes("rest") || path[0] === "normal") continue;
    // The visit tells it as soon as anything else is observed.
    if (valueAt(one.visit?.record.defaults, path) !== undefined) continue;
    yield* observationQuestions(missing, organ);
  }
}

/** One for each part of an observation. */
function* observationQuestions(missing: MissingObservation, organ: PlacedOrgan): Generator<ValueQuestion> {
  const { definition, path, part } = missing;
  const parts = part === undefined ? Object.keys(definition.parts ?? {}) : [];
  const title = part === undefined ? definition.title : capital(missingTitle(missing));
  const look = part === undefined ? definition.look : `${definition.title}. ${definition.look}`;
  for (const at of parts.length === 0 ? [path] : parts.map((key) => [...path, key])) {
    const name = definition.parts?.[String(at.at(-1))];
    yield {
      kind: "value",
      id: formatPath(at),
      text: `${organ.definition.title}: ${name ?? title} (${look})`,
      paths: [at],
      words: definition.kind === "choice" || definition.kind === "choices" ? (definition.values ?? []) : [],
      ...(definition.kind === "choices" && { between: "," as const }),
    };
  }
}

/** The first grade of an organ that is graded even where nothing else is wrong with it, such as the conchae. */
export function firstGrade(one: Case, organ: PlacedOrgan): ValueQuestion | undefined {
  if (one.protocol.observations === "optional") return undefined;
  const [graded] = Object.entries(organ.definition.observations ?? {}).filter(
    ([, { kind, required }]) => kind === "grade" && required !== undefined,
  );
  if (graded === undefined) return undefined;
  const [observation, definition] = graded;
  const path = [...organ.path, observation];
  const [first] = observationQuestions({ organ, observation, definition, path, part: undefined }, organ);
  return first;
}

/** One reason for all organs that were left alone without one, and for all that the same prevented from being judged. */
function* reasonsOf(one: Case): Generator<ValueQuestion> {
  const silent = one.due.filter((organ) => {
    const { status, reason, path } = one.organ(organ);
    return /^not_/.test(status) && reason === undefined && path.join(".") === organ.id;
  });
  for (const [because, organs] of grouped(silent, (organ) => one.organ(organ).because ?? "")) {
    const isSeen = one.organ(organs[0]).status === "not_assessable";
    yield {
      kind: "value",
      id: `reason ${silent.map(({ id }) => id).join()}`,
      text: isSeen
        ? `${capital(because || "Not assessable")}: ${namesOf(organs)}. What had happened`
        : `Why not examined: ${namesOf(organs)}`,
      paths: organs.map(({ id }) => [
        ...pathOf(id),
        ...(isSeen ? ["not_assessable", "why"] : ["not_examined"]),
      ]),
      words: [],
      example: isSeen ? "dead for a day in the sun" : "skull left closed",
    };
  }
}

/** What the words of a finding leave open; site, side and note are asked once, while it is told. */
function* fieldsOf(one: Case, placed: PlacedFinding, isTold: boolean): Generator<ValueQuestion> {
  const { organ, finding, path } = placed;
  const asked = processOf(finding);
  // Where the organ is graded, the grades say how much there is.
  const isGraded =
    asked.observed?.some((key) => organ.definition.observations?.[key]?.kind === "grade") === true;
  const isOfHowMuch = !isGraded && !saysHowMuch(finding) && !isUnasked(one, placed);
  const isLying =
    asked.distribution !== "no" && organ.definition.kind === undefined && !isUnasked(one, placed);
  const fields = [
    ...(isTold && organ.definition.form === "paired" && path.includes("findings") ? ["side"] : []),
    ...(isTold ? ["site"] : []),
    ...(isLying ? ["distribution"] : []),
    ...(asked.needs ?? []),
    ...(isOfHowMuch ? [...measuresOf(placed), "severity"] : []),
    ...(isTold ? ["note"] : []),
  ];
  for (const field of new Set(fields)) {
    const at = [...path, field];
    if (field in finding) continue;
    yield {
      kind: "value",
      id: formatPath(at),
      text: `${organ.definition.title}, ${finding.process}: ${fieldText[field] ?? field}`,
      paths: [at],
      ...wordsAt("case", at),
      example: fieldExample[field],
    };
  }
}

const fieldText: Readonly<Record<string, string>> = {
  side: "on which side",
  site: "where in the organ",
  distribution: "how it lies",
  extent: "share of the organ in per cent",
  size: "size in mm",
  number: "how many",
  volume: "amount in ml",
  note: "what the words do not say",
};
const fieldExample: Readonly<Record<string, string>> = {
  extent: "20",
  size: "25, or 30 x 20",
  number: "3",
  volume: "40",
};

/** Where the next finding of an organ stands, and what is written of it first. */
export function findingPath({ path, entry, findings, status }: OrganState, organ: PlacedOrgan): Path {
  const own = path.join(".") === organ.id || status === "blank" ? organ.path : [];
  const isListed = entry !== undefined && status !== "blank" && status !== "normal";
  return [...(own.length === 0 ? organ.path : own), ...(isListed ? ["findings"] : []), findings.length];
}

/** `skin, snout, feet and claws`: titles of organs may hold an `and` of their own */
export const namesOf = (organs: readonly PlacedOrgan[]): string =>
  organs.map(({ definition }) => definition.title.toLowerCase()).join(", ");

/** Words for what can be wrong with an organ of this pig. */
export const processesOf = (one: Case, organ: PlacedOrgan): readonly string[] =>
  wordsAt("case", [...organ.path, 0, "process"]).words.filter((process) => !cannotBe(process, organ, one));
