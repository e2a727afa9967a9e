/** A sentence a change, as one veterinarian would tell it to another; and a line a fact of a whole record. */
import { isKeyed, type Keyed } from "../cases/model/path.ts";
import { agentName } from "../knowledge/agents.ts";
import { organById, systems, systemTitle } from "../knowledge/index.ts";
import { findingWords, materialTitle } from "../record/index.ts";
import { capital, listing } from "../words/listing.ts";
import { type Change, isOrgan, lastKey, plainRecord, type RecordKind, type Step } from "./changes.ts";
import { asKeyed, isWord } from "./pairs.ts";

const systemIds = new Set(systems.map(({ id }) => id));

/** What stands at a key, where the key alone does not say it. */
const names: Readonly<Record<string, string>> = {
  at: "time",
  into: "container",
  for: "tests",
  from: "taken from",
  because: "reason",
  with: "substance",
  case: "name of the case",
  visit: "name of the visit",
  farm: "name of the farm",
  at_risk: "pigs at risk",
  rests_on: "ground",
  answered: "closed, nothing is waited for",
  sha256: "fingerprint",
};

const nameOf = (key: string): string => names[key] ?? key.replaceAll("_", " ");

/** An item of a list: what it is called, and the keys that tell which one it is. */
const items: Readonly<Record<string, readonly [title: string, by: readonly string[]]>> = {
  samples: ["sample", ["id"]],
  findings: ["", ["process", "side", "site"]],
  morphologic: ["diagnosis", ["text"]],
  aetiologic: ["cause", ["text"]],
  disease: ["disease", ["text"]],
  authority: ["authority,", ["stands", "at"]],
  readings: ["reading of", ["reader"]],
  photos: ["photograph", ["file"]],
  parcels: ["parcel sent", ["sent"]],
  environment: ["environment of", ["group"]],
  tests: ["test", ["test", "from"]],
  treatments: ["treatment", ["group", "with"]],
  recommendations: ["recommendation", ["do"]],
  accepted: ["accepted", ["rule", "at"]],
  seals: ["signature", ["by", "at"]],
  not_examined: ["not examined,", ["systems"]],
  entries: ["result of", ["sample", "pool", "pair", "test", "agent", "analyte"]],
  antibiogram: ["", ["drug"]],
  lesions: ["lesion", ["organ", "process"]],
};

/** Short by nature: a place, a person, a sample. */
const isPlace = (key: string): boolean => !["text", "do", "with", "agent", "pair"].includes(key);

function itemName(list: string, item: Keyed): string {
  const [title, by] = items[list] ?? [nameOf(list), []];
  const named = by
    .filter((key) => item[key] !== undefined)
    .map((key) => (isPlace(key) ? inWords([item[key]].flat()) : words(item[key], key)));
  return [title, named.join(", ")].filter((part) => part !== "").join(" ");
}

/** Lists of sentences, and what one of them is. */
const ofProse: Readonly<Record<string, string>> = {
  differentials: "differential",
  vaccinations: "vaccination",
  changes: "change on the farm",
  criteria: "criterion",
};

const inWords = (parts: readonly unknown[]): string =>
  parts
    .filter((part) => part !== undefined && part !== null)
    .map(String)
    .join(", ");

/** One change in words, without the name of its record. */
export function sentence(kind: RecordKind, { change, at, before, after }: Change): string {
  const special = specialSentence({ change, at, before, after });
  if (special !== undefined) return special;
  const { place, key, unit } = placeOf(kind, at);
  const told = (value: unknown): string => `${words(value, key)}${typeof value === "number" ? unit : ""}`;
  const last = at.at(-1);
  if (change === "order") return `${place}: the same in another order`;
  // An item says by its name what it is, and a word of a list is all that is to be said.
  const isItem = typeof last === "object";
  if (isItem && !isKeyed(last.item) && change !== "changed")
    return `${place} ${ending[change]}: ${told(last.item)}`;
  if (change === "changed") {
    const [was, is] = together(before, after, told);
    return `${place}: ${was.length + is.length < 40 && !/[ ,]/.test(withoutUnit(was) + withoutUnit(is)) ? `${was} to ${is}` : `now ${is}, before ${was}`}`;
  }
  const value =
    isItem && isKeyed(last.item) ? rest(lastKey(at), last.item) : told(change === "added" ? after : before);
  if (change === "added") return `${place} added${value === "" ? "" : `: ${value}`}`;
  return `${place} taken out${value === "" ? "" : `; it was ${value}`}`;
}

/** What two people wrote of one thing. @param both undefined on the side that took it out */
export function conflictSentence(
  kind: RecordKind,
  at: readonly Step[],
  both: { readonly ours: unknown; readonly theirs: unknown },
): string {
  const { place, key, unit } = placeOf(kind, at);
  if (both.ours === undefined || both.theirs === undefined)
    return `${place}: taken out ${both.ours === undefined ? "here and changed there" : "there and changed here"}; what was changed is kept`;
  const told = (value: unknown): string => `${words(value, key)}${typeof value === "number" ? unit : ""}`;
  return `${place}: ${told(both.ours)} here, ${told(both.theirs)} there`;
}

const ending = { added: "added", removed: "taken out" } as const;

/** A number with its unit is one word: `35 %`, `17.5 kg`. */
const withoutUnit = (value: string): string => value.replace(/^([\d.]+) (?=\S+$)/, "$1");

/** Of two moments of one day only the time. */
function together(before: unknown, after: unknown, told: (value: unknown) => string): [string, string] {
  const [was, is] = [told(before), told(after)];
  const isOneDay = moment.test(was) && moment.test(is) && was.slice(0, 10) === is.slice(0, 10);
  return isOneDay ? [was.slice(11), is.slice(11)] : [was, is];
}

const moment = /^\d{4}-\d\d-\d\dT\d\d:\d\d/;

/** Changes that people have a word for. */
function specialSentence({ change, at, before, after }: Change): string | undefined {
  const last = at.at(-1);
  if (last === "basis" && at[0] === "diagnosis") {
    const of = at.length === 2 ? "Diagnosis" : placeOf("case", at.slice(0, -1)).place;
    if (change === "removed") return `${of} no longer says what it rests on; it was ${grounds(before)}`;
    const was = change === "changed" ? `, before ${grounds(before)}` : "";
    return after === "laboratory" || after === "histology"
      ? `${of} gained ${grounds(after)} as its basis${was}`
      : `${of} rests on ${grounds(after)}${was}`;
  }
  if (at[0] === "seals" && at.length === 2 && typeof last === "object" && isKeyed(last.item)) {
    const { by, at: when, because } = last.item;
    const what = because === undefined ? "Signed" : "What was changed is signed";
    const reason = because === undefined ? "" : `: ${because}`;
    return change === "added"
      ? `${what} by ${by} on ${String(when).slice(0, 10)}${reason}`
      : `Signature of ${by} on ${String(when).slice(0, 10)} ${change === "removed" ? "taken out" : "changed"}`;
  }
  if (at[0] === "authority" && at.length === 2 && typeof last === "object" && isKeyed(last.item)) {
    if (change !== "added") return undefined;
    const { stands, for: alarms, at: when, reached, ground, sample } = last.item;
    const which = Array.isArray(alarms) ? `Alarm ${listing(alarms.map(String))}` : "Alarm";
    const because = [ground, sample].filter((one) => one !== undefined).map(String);
    return [
      `${which} ${String(stands)}${when === undefined ? "" : ` ${String(when)}`}${reached === undefined ? "" : `, ${String(reached)}`}`,
      ...because,
    ].join("; ");
  }
  // The file is another than the one that was measured before.
  if (last === "sha256" && at.at(-2) === "measured" && change === "changed")
    return `${placeOf("case", at.slice(0, -2)).place}: tracing changed, and measured again`;
  return undefined;
}

const grounds = (basis: unknown): string =>
  ({ laboratory: "the laboratory", gross: "what was seen", histology: "histology", pending: "nothing yet" })[
    String(basis)
  ] ?? String(basis);

interface Place {
  readonly place: string;
  /** The key that its value stands under. */
  readonly key: string;
  /** What belongs behind a number. */
  readonly unit: string;
}

/** Where something stands, in words: `Lungs, consolidation, left cranial lobe`. */
function placeOf(kind: RecordKind, at: readonly Step[]): Place {
  const [system, organ, ...inside] = at;
  const isOrganPlace = kind === "case" && typeof system === "string" && systemIds.has(system);
  const definition = isOrganPlace ? organById(`${system}.${String(organ)}`)?.definition : undefined;
  const parts: string[] = [];
  let unit = "";
  let steps = at;
  if (isOrganPlace) {
    const whole = systemTitle(system);
    parts.push(
      organ === undefined || organ === "rest"
        ? `${whole}, the rest`
        : (definition?.title ?? `${whole}, ${nameOf(String(organ))}`),
    );
    const [observed, part] = inside;
    const observation = typeof observed === "string" ? definition?.observations?.[observed] : undefined;
    steps = inside;
    if (observation !== undefined && typeof observed === "string") {
      unit = observation.kind === "percent" ? " %" : "";
      const title = typeof part === "string" ? observation.parts?.[part] : undefined;
      if (title === undefined) parts.push(nameOf(observed));
      else parts.push(...(title.includes(nameOf(observed)) ? [title] : [nameOf(observed), title]));
      steps = inside.slice(title === undefined ? 1 : 2);
    }
  }
  let list = lastKey(at.slice(0, at.length - steps.length));
  for (const [index, step] of steps.entries()) {
    if (typeof step === "string") {
      list = step;
      const below = steps[index + 1];
      // The item says of which list it is.
      if (typeof below !== "object" || (isWordItem(below.item) && ofProse[step] === undefined)) {
        if (index === steps.length - 1 || !["diagnosis", "groups"].includes(step))
          parts.push(index === 1 && steps[0] === "groups" ? `group ${step}` : nameOf(step));
      }
    } else if (isKeyed(step.item)) parts.push(itemName(list, step.item));
    else if (!isWordItem(step.item) || ofProse[list] !== undefined) parts.push(ofProse[list] ?? nameOf(list));
  }
  return { place: capital(parts.join(", ")), key: list, unit };
}

const isWordItem = (item: unknown): boolean => isWord(item);

/** What an item says beside what it is known by. */
function rest(list: string, item: Keyed): string {
  const [, known] = items[list] ?? ["", []];
  if (list === "findings") {
    const more = { ...item, process: undefined, side: undefined, site: undefined };
    const others = Object.entries(item).filter(([key]) => beside.has(key));
    return [findingWords(more), ...others.map(entryWords)].filter((part) => part !== "").join(", ");
  }
  return Object.entries(item)
    .filter(([key]) => !known.includes(key))
    .map(entryWords)
    .join(", ");
}

/** Keys of a finding that are not among the words by which it is described. */
const beside = new Set(["margin", "contour", "shape", "volume", "certainty", "note"]);

const entryWords = ([key, value]: readonly [string, unknown]): string =>
  key === "from" && typeof value === "string"
    ? `from ${materialTitle(value)}`
    : `${nameOf(key)} ${words(value, key)}`;

/** A value in words. @param key under which it stands */
function words(value: unknown, key = ""): string {
  if (Array.isArray(value))
    return value
      .map((item) => (key === "findings" && isKeyed(item) ? described(item) : words(asKeyed(key, item), key)))
      .join(isKeyed(value[0]) ? "; " : ", ");
  if (key === "agent") return agentName(String(value));
  // Enough of a fingerprint to tell two apart.
  if (typeof value === "string" && /^[0-9a-f]{64}$/.test(value)) return value.slice(0, 8);
  if (isKeyed(value)) return answerWords(value) ?? Object.entries(value).map(entryWords).join(", ");
  return typeof value === "string" && /\s/.test(value) && !/^[<>≤≥]?\s*[\d.]+( x [\d.]+)* \S+$/.test(value)
    ? `"${value}"`
    : String(value);
}

const described = (item: Keyed): string =>
  [itemName("findings", item), rest("findings", item)].filter((part) => part !== "").join(", ");

/** How an organ is, where a value says no more than that. */
function answerWords(value: Keyed): string | undefined {
  const keys = Object.keys(value);
  const { state, findings, not_examined: why, not_assessable: not } = value;
  const parts = [
    ...(state === undefined ? [] : [String(state)]),
    ...(Object.hasOwn(value, "not_examined")
      ? [`not examined${typeof why === "string" ? ` (${why})` : ""}`]
      : []),
    ...(isKeyed(not) ? [`not assessable (${inWords([not.because, not.why])})`] : []),
    ...(Array.isArray(findings) ? [words(findings, "findings")] : []),
  ];
  if (parts.length === 0) return undefined;
  const others = keys.filter((key) => !["state", "findings", "not_examined", "not_assessable"].includes(key));
  return [...parts, ...others.map((key) => entryWords([key, value[key]]))].join(", ");
}

const answers = new Set(["state", "not_examined"]);

/** Every fact of a record on a line of its own, in the order of the file, so that lines can be set against each other. */
export function factLines(kind: RecordKind, record: Keyed): string[] {
  const lines: string[] = [];
  const walk = (value: unknown, at: readonly Step[]): void => {
    const list = lastKey(at);
    if (Array.isArray(value) && !value.every(isWord))
      for (const [index, item] of value.entries())
        walk(asKeyed(list, item), [...at, { index, item: asKeyed(list, item) }]);
    else if (isKeyed(value)) {
      // Its name says these already.
      const [, by] = (typeof at.at(-1) === "object" ? items[list] : undefined) ?? ["", []];
      const more = Object.entries(value).filter(([key]) => !by.includes(key));
      if (more.length === 0) lines.push(placeOf(kind, at).place);
      for (const [key, inside] of more) walk(inside, [...at, key]);
    } else {
      const { place, key, unit } = placeOf(kind, at);
      const last = at.at(-1);
      const isAnswer =
        answers.has(key) && kind === "case" && typeof last === "string" && isOrgan(at.slice(0, -1));
      const shown = isAnswer ? placeOf(kind, at.slice(0, -1)).place : place;
      const said = `${key === "not_examined" && isAnswer ? "not examined, " : ""}${words(value, key)}`;
      lines.push(`${shown}: ${said}${typeof value === "number" ? unit : ""}`);
    }
  };
  walk(plainRecord(kind, record), []);
  return lines;
}

/** Who or what a record is about, in a few words. */
export function recordWords(kind: RecordKind, record: Keyed): string {
  if (kind === "case") {
    const pig = isKeyed(record.pig) ? record.pig : {};
    const { basis } = isKeyed(record.selection) ? record.selection : {};
    const { tag, group, age, sex } = pig;
    return inWords([tag === undefined ? undefined : `tag ${String(tag)}`, group, age, sex, basis]);
  }
  if (kind === "visit") return inWords([record.date, record.veterinarian]);
  if (kind === "farm") return inWords([record.name]);
  const { entries } = record;
  return `${Array.isArray(entries) ? entries.length : 0} results`;
}
