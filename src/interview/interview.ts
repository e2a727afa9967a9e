/** The interview: asks what is due, writes after every answer, goes back and goes on. */
import { type Case, formatPath, type Path } from "../cases/index.ts";
import { sampleLine } from "../explain/knife.ts";
import { wordsAt } from "../fix/probe.ts";
import { withValue } from "../fix/with-value.ts";
import type { PlacedOrgan } from "../knowledge/index.ts";
import type { NecropsyStep } from "../knowledge/knife.ts";
import { askedOfNormal } from "../record/index.ts";
import { samplesWanted } from "../sheet/index.ts";
import { capital } from "../words/listing.ts";
import { type Asker, type Choice, keysFor, type Reply } from "./asker.ts";
import type { OrgansQuestion, Question, SampleQuestion, Session, ValueQuestion } from "./kinds.ts";
import { areTaken } from "./laboratory.ts";
import {
  findingPath,
  firstGrade,
  isStopped,
  mustStop,
  namesOf,
  nextQuestion,
  processesOf,
} from "./question.ts";
import { typedValue } from "./typed.ts";
import { completions } from "./words.ts";

/** What the interview has of the file it fills in. */
export interface Desk {
  readonly ask: Asker;
  /** Reads a text as the case; what does not fit in it comes in sentences. */
  read(text: string): { readonly one: Case; readonly faults: readonly string[] };
  /** Writes the file. @returns whether it was written */
  save(before: string, after: string): boolean;
  /** What a check says of an answer that it did not say before. */
  remarks(before: Case, after: Case): readonly string[];
  /** The notice of alarms that stand. */
  notice(one: Case): readonly string[];
}

export interface Ended {
  readonly text: string;
  readonly answers: number;
  readonly how: "done" | "stopped" | "alarm" | "kept";
}

/** A change of the file, or of what is passed over. */
interface Move {
  readonly edits?: readonly (readonly [path: Path, value: unknown])[];
  readonly skip?: readonly string[];
  readonly telling?: PlacedOrgan | undefined;
}

type Answered = Move | Exclude<Reply, { answer: string }>;

interface State {
  readonly text: string;
  readonly session: Session;
}

export async function interview(desk: Desk, text: string, start: Session): Promise<Ended> {
  const { ask } = desk;
  const history: State[] = [];
  let state: State = { text, session: start };
  let shown: NecropsyStep | undefined;
  const seen = new Set<string>();
  let answers = 0;
  const ended = (how: Ended["how"]): Ended => ({ text: state.text, answers, how });
  for (;;) {
    const { one } = desk.read(state.text);
    const question = nextQuestion(one, state.session);
    if (question === undefined) return ended(isStopped(one, state.session) ? "alarm" : "done");
    if (question.step !== undefined && question.step !== shown) ask.say(stepLines(question.step, one));
    shown = question.step ?? shown;
    if (question.kind === "organs") {
      const fresh = [...question.must, ...question.wanted].filter(({ id }) => !seen.has(id));
      for (const { id } of fresh) seen.add(id);
      ask.say(
        fresh.map(({ definition: { title, look } }) => ({ is: "plain", text: `  ${title}: ${look}.` })),
      );
    }
    const answer = await answered(desk, one, question);
    if (answer === "stop") return ended("stopped");
    if (answer === "back") {
      const before = history.pop();
      if (before === undefined) ask.say([{ is: "plain", text: "This is the first question." }]);
      else {
        if (before.text !== state.text && !desk.save(state.text, before.text)) return ended("kept");
        state = before;
      }
      continue;
    }
    const move: Move = answer === "skip" ? { skip: idsOf(question) } : answer;
    const after = applied(state.text, move);
    if (typeof after !== "string") {
      ask.say([
        {
          is: "fault",
          text: `${formatPath(after)} stands in the file in a way in which nothing can be added safely; write it there yourself.`,
        },
      ]);
      history.push(state);
      state = { ...state, session: skipping(state.session, { skip: idsOf(question) }) };
      continue;
    }
    const now = desk.read(after);
    if (now.faults.length > 0) {
      ask.say(now.faults.map((fault) => ({ is: "fault", text: fault })));
      continue;
    }
    if (after !== state.text && !desk.save(state.text, after)) return ended("kept");
    history.push(state);
    state = { text: after, session: skipping(state.session, move) };
    if (move.edits !== undefined) answers++;
    ask.say(desk.remarks(one, now.one).map((remark) => ({ is: "fault", text: remark })));
    if (mustStop(now.one) && !mustStop(one))
      ask.say(desk.notice(now.one).map((line) => ({ is: "notice", text: line })));
  }
}

const skipping = (session: Session, move: Move): Session => ({
  ...session,
  skipped: new Set([...session.skipped, ...(move.skip ?? [])]),
  telling: "telling" in move ? move.telling : session.telling,
});

/** The new text, or the path that could not be written. */
function applied(text: string, { edits = [] }: Move): string | Path {
  let after = text;
  for (const [path, value] of edits) {
    const next = withValue(after, path, value);
    if (next === undefined) return path;
    after = next;
  }
  return after;
}

const idsOf = (question: Question): readonly string[] =>
  question.kind === "organs" ? [...question.must, ...question.wanted].map(({ id }) => id) : [question.id];

function stepLines(step: NecropsyStep, one: Case): Parameters<Asker["say"]>[0] {
  const { title, caution, landmark, samples } = step;
  const wanted = samplesWanted(one).filter((sample) => sample.step === step);
  const said = (line: string | { readonly say: string }): string =>
    typeof line === "string" ? line : line.say;
  return [
    { is: "step", text: title },
    ...(caution ?? []).map((line) => ({ is: "caution", text: `Caution: ${line.say}` }) as const),
    ...landmark.map((line) => ({ is: "plain", text: `Landmark: ${said(line)}` }) as const),
    ...samples
      .filter(({ from, into }) => wanted.some((due) => due.from === from && into.includes(due.into)))
      .map((sample) => ({ is: "plain", text: `Take now: ${sampleLine(sample)}` }) as const),
  ];
}

async function answered(desk: Desk, one: Case, question: Question): Promise<Answered> {
  if (question.kind === "organs") return organsAnswered(desk, one, question);
  if (question.kind === "value") return valueAnswered(desk.ask, one, question);
  if (question.kind === "sample") return sampleAnswered(desk.ask, question);
  const { organ } = question;
  const more = await desk.ask.key(`Another finding of ${namesOf([organ])}?`, [
    { key: "n", name: "no", value: "no" },
    { key: "y", name: "yes", value: "yes" },
  ]);
  if (typeof more === "string" && more !== "skip") return more;
  if (more === "skip" || more.answer === "no") return { skip: [question.id], telling: undefined };
  return findingAnswered(desk.ask, one, organ);
}

async function sampleAnswered(ask: Asker, { id, text, edit }: SampleQuestion): Promise<Answered> {
  const reply = await ask.key(text, [
    { key: "y", name: "yes", value: "yes" },
    { key: "n", name: "no", value: "no" },
  ]);
  if (typeof reply === "string") return reply;
  if (reply.answer === "no") return { skip: [id] };
  return edit === undefined ? { skip: [id, areTaken] } : { edits: [edit] };
}

async function valueAnswered(ask: Asker, one: Case, question: ValueQuestion): Promise<Answered> {
  const { text, words, example, between, isOpen = false, paths } = question;
  const choices = between !== undefined || isOpen ? undefined : keysFor(words);
  const hint = example === undefined ? "" : ` (such as ${example})`;
  const reply =
    choices === undefined
      ? await ask.line(`${text}${hint}`, (typed) => listCompletions(typed, words, between))
      : await ask.key(text, choices);
  if (typeof reply === "string") return reply;
  const value = (path: Path): unknown =>
    between !== undefined
      ? reply.answer
          .split(between)
          .filter((part) => part.trim() !== "")
          .map((part) => wordOf(part, words))
      : typedValue(one, path, wordOf(reply.answer, words));
  return { edits: paths.map((path) => [path, value(path)] as const) };
}

/** A word whose beginning is its own, or what was typed. */
function wordOf(typed: string, words: readonly string[]): string {
  const found = completions(typed, words);
  return found.length === 1 ? (found[0] ?? typed) : typed.trim();
}

/** Of a list the last word is completed. */
function listCompletions(
  typed: string,
  words: readonly string[],
  between: string | undefined,
): readonly string[] {
  const comma = between === undefined ? 0 : typed.lastIndexOf(between) + 1;
  const last = typed.slice(comma).trimStart();
  const before = typed.slice(0, typed.length - last.length);
  return completions(last, words).map((word) => `${before}${word}`);
}

async function organsAnswered({ ask }: Desk, one: Case, question: OrgansQuestion): Promise<Answered> {
  const { must, wanted, title } = question;
  const all = [...must, ...wanted];
  const isOne = all.length === 1;
  const graded = isOne && all[0] !== undefined ? firstGrade(one, all[0]) : undefined;
  const text = [
    must.length === 0 ? "" : `${capital(namesOf(must))}`,
    wanted.length === 0 ? "" : `${must.length === 0 ? "Wanted" : "wanted besides"}: ${namesOf(wanted)}`,
  ]
    .filter(Boolean)
    .join("; ");
  const reply = await ask.key(`${title}. ${text}`, [
    ...(must.length === 0
      ? []
      : [{ key: "n", name: wanted.length === 0 ? "normal" : "due ones normal", value: "normal" }]),
    ...(wanted.length === 0 ? [] : [{ key: "a", name: "all normal", value: "all" }]),
    { key: "f", name: "finding", value: "finding" },
    ...(graded === undefined ? [] : [{ key: "g", name: "grades", value: "grades" }]),
    { key: "x", name: "not examined", value: "not_examined" },
    { key: "u", name: "not assessable", value: "not_assessable" },
  ]);
  if (typeof reply === "string") return reply;
  if (reply.answer === "normal") return normal(one, must, wanted);
  if (reply.answer === "all") return normal(one, all, []);
  if (reply.answer === "grades" && graded !== undefined) return valueAnswered(ask, one, graded);
  const isFinding = reply.answer === "finding";
  const which = isOne ? { answer: all[0]?.id ?? "" } : await picked(ask, all, !isFinding);
  // Whoever does not say which is asked again what there is.
  if (typeof which === "string") return which === "stop" ? "stop" : {};
  const organs = which.answer === "all" ? all : all.filter(({ id }) => id === which.answer);
  if (!isFinding) return unseen(ask, reply.answer, organs);
  const [organ] = organs;
  return organ === undefined ? {} : findingAnswered(ask, one, organ);
}

/** Organs of which nothing can be said; why is asked next. */
async function unseen(ask: Asker, how: string, organs: readonly PlacedOrgan[]): Promise<Answered> {
  const written = (value: unknown): Move => ({
    edits: organs.map((organ) => [[...organ.path], { [how]: value }] as const),
  });
  if (how === "not_examined") return written(null);
  const [{ path } = { path: [] }] = organs;
  const { words } = wordsAt("case", [...path, how, "because"]);
  const because = await ask.key(`${capital(namesOf(organs))}: what prevents it`, keysFor(words) ?? []);
  return typeof because === "string"
    ? because === "stop"
      ? "stop"
      : {}
    : written({ because: because.answer });
}

/**
 * Organs that were named on the screen. `rest` says it of the last ones of a system in one line, but only where it speaks
 * of no organ that was not named.
 */
function normal(one: Case, organs: readonly PlacedOrgan[], others: readonly PlacedOrgan[]): Move {
  const [{ system } = { system: "" }] = organs;
  const isRest =
    organs.length > 1 &&
    organs.every((organ) => askedOfNormal(one, organ).length === 0) &&
    one.due.every(
      (organ) => organ.system !== system || organs.includes(organ) || one.organ(organ).status !== "blank",
    );
  return {
    edits: isRest
      ? [[[system, "rest"], "normal"]]
      : organs.map((organ) => [[...organ.path], "normal"] as const),
    skip: others.map(({ id }) => id),
  };
}

function picked(ask: Asker, organs: readonly PlacedOrgan[], withAll: boolean): Promise<Reply> {
  const choices: readonly Choice[] = organs.map(({ id, definition }, index) => ({
    key: "123456789cdefghijklmnoprst"[index] ?? "",
    name: definition.title.toLowerCase(),
    value: id,
  }));
  return ask.key("Which one", [
    ...choices,
    ...(withAll ? [{ key: "a", name: "all of them", value: "all" }] : []),
  ]);
}

async function findingAnswered(ask: Asker, one: Case, organ: PlacedOrgan): Promise<Answered> {
  const words = processesOf(one, organ);
  const reply = await ask.line(`${organ.definition.title}: what is wrong`, (typed) =>
    completions(typed, words),
  );
  if (typeof reply === "string") return reply === "stop" ? "stop" : {};
  const path = findingPath(one.organ(organ), organ);
  const first = { process: wordOf(reply.answer, words) };
  const isFirst = path.at(-1) === 0;
  return {
    edits: [isFirst ? [path.slice(0, -1), [first]] : [path, first]],
    telling: organ,
  };
}
