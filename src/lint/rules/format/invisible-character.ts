import { formatPath, type Path } from "../../../cases/index.ts";
import { eachText } from "../../../record/index.ts";
import { hiddenName } from "../../../words/hidden-characters.ts";
import { visible } from "../../../words/visible.ts";
import { type FileRule, practice } from "../../rule.ts";

export const invisibleCharacter: FileRule = {
  id: "invisible-character",
  scope: "file",
  family: "format",
  level: "warning",
  summary: "No text of a case, a visit or a farm contains an invisible character.",
  protects:
    "Copied from a web page or a message, 2217 with a zero-width space in it is another pig to every table and search.",
  lookAlike:
    "Nothing on the label of a pig looks like that; a soft hyphen that was pasted into a note is passed.",
  source: practice("Unicode, format characters"),
  bad: { case: 'pig: {tag: "9\\u200b01"}' },
  good: { case: 'pig: {tag: "901"}' },
  check(one, report) {
    eachText(one.record, (written, key, pathOf) => {
      if (plain.test(written)) return;
      const path = pathOf();
      // A soft hyphen comes with prose that was pasted; nobody searches a table for a note.
      const text = key === "note" ? written.replaceAll("\u00ad", "") : written;
      const blank = isLabel(path) ? oddBlank.exec(text)?.[0] : undefined;
      if (blank !== undefined) {
        report(
          `${formatPath(path)}: "${text.replace(blank, `\\u{${hexOf(blank)}}`)}" contains an invisible space (U+${hexOf(blank).toUpperCase().padStart(4, "0")}). Retype it.`,
          path,
        );
        return;
      }
      const shown = visible(text.replaceAll(/[\n\r\t]/g, " "));
      const code = /\\u\{([0-9a-f]+)\}/.exec(shown)?.[1];
      if (code !== undefined && !text.includes(`\\u{${code}}`))
        report(
          `${formatPath(path)}: "${shown.slice(0, 60)}" contains ${hiddenName(String.fromCodePoint(Number.parseInt(code, 16)))}. Retype it.`,
          path,
        );
    });
  },
};

/** What is written on a pig or a pot, and read back by tables. */
const isLabel = (path: Path): boolean =>
  (path[0] === "pig" && ["tag", "pen", "litter"].includes(String(path[1]))) || path.at(-1) === "bag";

/** A blank at either end, or one that is none of the keyboard. */
const oddBlank = /^\s|\s$|[^\S ]/u;

const hexOf = (character: string): string => (character.codePointAt(0) ?? 0).toString(16);

/** Nearly all texts, without a blank at either end; a cheap look before the costly one. */
const plain = /^(?! )[ -~]*$(?<! )/;
