import { formatPath, saysNothing } from "../../../cases/index.ts";
import { plausible } from "../../../knowledge/index.ts";
import { eachText } from "../../../record/index.ts";
import { type FileRule, practice } from "../../rule.ts";

export const textSaysNothing: FileRule = {
  id: "text-says-nothing",
  scope: "file",
  family: "format",
  level: "error",
  summary: "A text that was asked for is more than a dash, a question mark or a placeholder.",
  protects:
    "A key with a question mark counts as answered in every table; a blank one is reported, and asked for while somebody still knows.",
  lookAlike:
    "An honest unknown as a reason is passed, and so is none as a complaint; people called Na or No are too, with a capital letter, and farms or readers that go by a number.",
  source: practice("a blank is an omission, a mark in its place hides it; common practice"),
  bad: { case: 'examiner: "?"' },
  good: { case: "examiner: R. Sallow" },
  check(one, report) {
    eachText(one.record, (text, key, pathOf) => {
      const isName = names.has(key);
      // Notes are not asked for.
      if (key === "note" || (!isName && !asked.has(key) && !marksOnly.test(text))) return;
      if (people.has(key) && isSurname(text)) return;
      const isNoName =
        isName && (marksOnly.test(text) || isAnyOf(text.trim().toLowerCase(), anywhere, noNames));
      if (!isNoName && !marksOnly.test(text) && !(asked.has(key) && isEmpty(key, text))) return;
      const path = pathOf();
      // Accepted entries have a rule of their own.
      if (path[0] === "accepted") return;
      report(
        `${formatPath(path)}: "${text}" ${isNoName ? "is not a name. Write the name" : "says nothing. Write what is meant"}, or leave the key blank until you know.`,
        path,
      );
    });
  },
};

const { anywhere, surnames, complaint, names: noNames } = plausible.says_nothing;

/** Where a name is asked for. */
const names = new Set(["examiner", "reader", "veterinarian", "contact", "by", "farm", "name"]);
/** Where a reason or an answer is asked for. */
const asked = new Set([
  "complaint",
  "question",
  "not_examined",
  "why",
  "because",
  "with",
  "drawn",
  "few",
  "comparison",
  "left_closed",
  "readers",
  "morphologic",
  "aetiologic",
  "differentials",
]);

/** Where a reason is asked for, and `none` or `later` is none. */
const reasons = new Set(["not_examined", "why", "because"]);

/** Where a person signs. */
const people = new Set(["examiner", "veterinarian"]);

/** `Na` and `No` are names of people, `na` and `NO` are none. */
const isSurname = (text: string): boolean =>
  /^\p{Lu}\p{Ll}+$/u.test(text.trim()) && isAnyOf(text.trim().toLowerCase(), surnames);

function isEmpty(key: string, text: string): boolean {
  const word = text.trim().toLowerCase();
  if (isAnyOf(word, anywhere) || /^(\p{L})\1+$/u.test(word)) return true;
  // `unknown` is an honest reason; a complaint is known to somebody.
  const isUnknown = isAnyOf(word, complaint);
  return reasons.has(key) ? saysNothing(text) && !isUnknown : key === "complaint" && isUnknown;
}

/** Dots, dashes, question marks and blanks; a plus or a tick may mean something. */
const marksOnly = /^[\s\p{P}=~|^`<>]*$/u;

const isAnyOf = (word: string, ...lists: readonly (readonly string[])[]): boolean =>
  lists.some((list) => list.includes(word));
