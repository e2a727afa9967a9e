/** What alarm patterns look for, where it stands in words only and no finding, check or call says it. */
import { callWhom, findAlarms, isLifted, recordedFinding } from "../../alarms/index.ts";
import { type Case, formatPath, type Path, type Visit } from "../../cases/index.ts";
import { type AlarmSign, alarmPatterns, alarmSigns, organById } from "../../knowledge/index.ts";
import { isElsewhere } from "../../notes/another-sense.ts";
import { type Affirmed, affirmed, hasAny } from "../../notes/index.ts";
import { type FreeText, fact, findingsOf, freeTextsOf, namedOrgans } from "../../record/index.ts";
import { listing } from "../../words/listing.ts";

export interface AlarmWords {
  readonly sign: AlarmSign;
  readonly path: Path;
  /** The words as they stand in the text. */
  readonly words: readonly string[];
  /** The organ to record it on. */
  readonly organ: string;
}

/** The alarm words of a case that nothing in its record says; one for each text. */
export const unrecordedWords = fact((one: Case): readonly AlarmWords[] =>
  freeTextsOf(one).flatMap((text) =>
    wordsOf(text, one.visit?.record.date)
      .filter(
        ({ sign, path }) =>
          !isRecorded(one, sign) && !isBeside(one, sign, text) && !isAnswered(one, sign, path),
      )
      .slice(0, 1),
  ),
);

/** The alarm words of a text of the visit that no case of it says either. */
export function unrecordedInVisit(visit: Visit, text: FreeText): AlarmWords | undefined {
  return wordsOf(text, visit.record.date).find(
    ({ sign }) => !visit.cases.some((one) => isRecorded(one, sign)) && !isLifted(visit, []),
  );
}

/** One word of every sign: a text without any of them, as most are, is not looked at again. */
const firstWords = Object.values(alarmSigns).flatMap(({ words }) => words[0] ?? []);

/** Every sign whose words the text affirms. */
function wordsOf({ text, path, organ }: FreeText, date: string | undefined): AlarmWords[] {
  if (!hasAny(text.normalize("NFC"), firstWords)) return [];
  return Object.values(alarmSigns).flatMap((sign) => {
    const own = organ !== undefined && sign.at.includes(organ);
    if (!own && organ !== undefined && sign.places === undefined) return [];
    const words = inOneSentence(sign, { text, own, organ, date });
    if (words === undefined) return [];
    const at = own ? organ : (namedOrgans(text).find(({ id }) => sign.at.includes(id))?.id ?? sign.at[0]);
    return at === undefined ? [] : [{ sign, path, words, organ: at }];
  });
}

interface Read {
  readonly text: string;
  readonly organ: string | undefined;
  /** The text belongs to an organ of the sign. */
  readonly own: boolean;
  /** Of the visit. */
  readonly date: string | undefined;
}

/** A word of each group, from one sentence and not from a part of it that speaks of another organ. */
function inOneSentence(sign: AlarmSign, { text, own, organ, date }: Read): readonly string[] | undefined {
  const groups = sign.words.map((list) =>
    affirmed(text, list).filter(
      (word) =>
        belongs(sign, word.clause) &&
        !isOtherwise(sign, sign.anywhere === true ? [word.clause] : word.clauses) &&
        !isElsewhere(word, text, date),
    ),
  );
  const [first = [], ...others] = groups;
  const isTogether = sign.together === true && !own;
  const where = ({ sentence, part }: Affirmed): string =>
    isTogether ? `${sentence}.${part}` : `${sentence}`;
  // Of several words in one place the first counts.
  const byPlace = others.map((group) => new Map([...group].reverse().map((word) => [where(word), word])));
  for (const word of first) {
    const beside = byPlace.map((words) => words.get(where(word)));
    const all = [word, ...beside].filter((one) => one !== undefined);
    const placed =
      own || (sign.anywhere === true && organ === undefined) || all.some((one) => hasPlace(sign, one));
    if (all.length === groups.length && placed) return [...new Set(all.map((one) => one.text))];
  }
  return undefined;
}

/** In the same part of the sentence; anywhere in it for words that speak by themselves: "vesicle fluid, coronary band". */
const hasPlace = ({ places = [], anywhere }: AlarmSign, { clause, clauses }: Affirmed): boolean =>
  (anywhere === true ? clauses : [clause]).some((part) => hasAny(part, places));

/** Words that speak by themselves are given another sense only by what stands close to them. */
const isOtherwise = ({ unless = [] }: AlarmSign, clauses: readonly string[]): boolean =>
  clauses.some((clause) => hasAny(clause, unless));

/** A part of a sentence that names organs belongs to a sign that is seen on one of them. */
function belongs(sign: AlarmSign, clause: string): boolean {
  const named = namedOrgans(clause);
  return named.length === 0 || named.some(({ id }) => sign.at.includes(id));
}

/** Whether an alarm, a check or a finding of the case says the same. */
function isRecorded(one: Case, { alarm, check, recorded }: AlarmSign): boolean {
  const answer = check === undefined ? undefined : one.record.alarm_check?.[check];
  return (
    (answer !== undefined && answer !== "none") ||
    recorded?.some((wanted) => recordedFinding(wanted, one) !== undefined) === true ||
    findAlarms(one).some(({ pattern }) => pattern.id === alarm)
  );
}

/** A finding that stands where the words stand: its own note, or for a part of an alarm the note of its organ. */
const isBeside = (one: Case, { beside, part, at }: AlarmSign, { path, organ }: FreeText): boolean =>
  findingsOf(one).some(
    ({ organ: { id }, finding: { process }, path: where }) =>
      beside.includes(process) &&
      at.includes(id) &&
      (formatPath(path).startsWith(`${formatPath(where)}.`) || (part === true && organ === id)),
  );

const isAnswered = (one: Case, { outside }: AlarmSign, path: Path): boolean =>
  isLifted(one, [{ subject: one, path, text: formatPath(path), beforeKnife: outside === true }]);

/** What to say of alarm words: where, what it may be, and what to write. */
export function wordsText(
  { sign, path, words, organ }: AlarmWords,
  { settings, inVisit = false }: { readonly settings: Case["settings"]; readonly inVisit?: boolean },
): string {
  const [system, key] = (organById(organ)?.id ?? organ).split(".");
  const pattern = alarmPatterns.find(({ id }) => id === sign.alarm);
  const check = sign.check === undefined ? "" : `alarm_check: {${sign.check}: suspected} and `;
  const said = listing(words.map((word) => `"${word}"`));
  const diseases = listing(pattern?.diseases ?? [], "or");
  const meaning = sign.part === true ? `may be one sign of ${diseases}` : `may be ${diseases}`;
  const orders = sign.part === true ? "" : `STOP, and call ${callWhom(settings)}. `;
  const place = inVisit ? "Record it in the case of the pig" : "Record it";
  return (
    `${formatPath(path)}: ${said} ${meaning}, but stands only in free text, which no alarm reads. ` +
    `${orders}${place}: ${check}${system}: {${key}: [${sign.record}]}. ` +
    `If there was none, say so ("${sign.denial}"); if the words mean something else, accept this with a reason.`
  );
}
