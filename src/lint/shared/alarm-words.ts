/** Words of an alarm sign in free text, where no closed answer and no finding says whether it was there. */
import { callWhom } from "../../alarms/index.ts";
import { type Case, formatPath, type Path, pathsMeet, type Settings, type Visit } from "../../cases/index.ts";
import { type AlarmSign, alarmSigns, type WantedFinding } from "../../knowledge/index.ts";
import { affirmed, clausesOf, hasAny } from "../../notes/index.ts";
import { looksOf, recordedFinding } from "../../patterns/index.ts";
import { type FreeText, fact, freeTextsOf, freeTextsOfVisit } from "../../record/index.ts";
import { listing } from "../../words/listing.ts";

interface Asked {
  readonly name: string;
  readonly sign: AlarmSign;
  readonly path: Path;
  /** The words as they stand in the text. */
  readonly words: readonly string[];
}

/** The signs that a case names in words and answers nowhere, each at the first text that names it. */
export const unansweredWords = (one: Case): Asked[] =>
  wordsOfCase(one).filter(({ name }) => answerOf(one, name) === undefined);

/** The signs that a case names in words and denies in its check. */
export const deniedWords = (one: Case): Asked[] =>
  wordsOfCase(one).filter(({ name }) => answerOf(one, name) === "none");

/** A lesion of the sign answers all its words, and a finding of another kind those of its own note. */
const wordsOfCase = fact((one: Case): readonly Asked[] =>
  asked(
    freeTextsOf(one),
    ({ lesions, other }, text) =>
      recorded(one, lesions).length > 0 ||
      recorded(one, other).some(({ path }) => pathsMeet(path, text.path)),
  ),
);

/** The same for the texts of a visit, for signs that are looked for on live pigs. */
export const unansweredInVisit = (visit: Visit): Asked[] =>
  asked(
    freeTextsOfVisit(visit),
    ({ look, lesions }) =>
      look !== "before_knife" || visit.cases.some((one) => recorded(one, lesions).length > 0),
  ).filter(
    ({ name }) =>
      answerOf(visit, name) === undefined && !visit.cases.some((one) => answerOf(one, name) === "seen"),
  );

function asked(
  texts: readonly FreeText[],
  isAnswered: (sign: AlarmSign, text: FreeText) => boolean,
): Asked[] {
  const found: Asked[] = [];
  for (const text of texts)
    for (const [name, sign] of alarmSigns) {
      if (!hasAny(text.text, firstWords(sign)) || found.some((one) => one.name === name)) continue;
      const words = isAnswered(sign, text) ? undefined : wordsOf(sign, text);
      if (words !== undefined) found.push({ name, sign, path: text.path, words });
    }
  return found;
}

const listsOf = new WeakMap<AlarmSign, readonly string[]>();

/** A text without any word of the first groups, as most are, is not looked at again. */
function firstWords(sign: AlarmSign): readonly string[] {
  const known = listsOf.get(sign) ?? sign.words.flatMap((groups) => groups.at(-1) ?? []);
  listsOf.set(sign, known);
  return known;
}

/** One word of each group of a set, from one part of a sentence; the name of the organ of a note counts as said. */
function wordsOf(
  { words, unless = [] }: AlarmSign,
  { text, organ }: FreeText,
): readonly string[] | undefined {
  const place = organ === undefined ? "" : `${organ.split(".").at(-1)?.replaceAll("_", " ")} `;
  for (const clause of clausesOf(text)) {
    if (hasAny(clause, unless)) continue;
    for (const groups of words) {
      const found = groups.map((group) => affirmed(`${place}${clause}`, group)[0]?.text);
      if (!found.includes(undefined)) return found.filter((word) => word !== undefined);
    }
  }
  return undefined;
}

/** The answer of the check; undefined where nobody looked. */
const answerOf = (subject: Case | Visit, name: string): "none" | "seen" | undefined => {
  const answer = looksOf(subject).find((look) => look.name === name)?.answer;
  return answer === "not-looked-at" ? undefined : answer;
};

const recorded = (one: Case, wanted: readonly WantedFinding[] = []) =>
  wanted.flatMap((finding) => recordedFinding(finding, one) ?? []);

/** What to say of the words: what they may mean, and where to answer. */
export function wordsText({ name, sign, path, words }: Asked, settings: Settings, inVisit = false): string {
  const said = listing(words.map((word) => `"${word}"`));
  const answer = inVisit ? `${name}: seen` : `${sign.look}: {${name}: seen}`;
  return (
    `${formatPath(path)}: ${said} may mean ${sign.asks}, and words decide nothing. ` +
    `If it was there, STOP, call ${callWhom(settings)}, and write alarm_check: {${answer}}; if not, write none in place of seen.`
  );
}
