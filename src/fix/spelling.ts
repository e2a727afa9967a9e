/** Another spelling of the same value, where there is no doubt what was meant. */
import { suggestion } from "../cases/faults/suggestion.ts";

/**
 * The known word that differs only in case, spaces, hyphens or underscores.
 * @returns undefined when the word is known as it stands, or when none or several words could be meant
 */
export function sameWord(written: string, known: readonly string[]): string | undefined {
  if (known.includes(written)) return undefined;
  const same = known.filter((word) => plain(word) === plain(written));
  return same.length === 1 ? same[0] : undefined;
}

const plain = (word: string): string =>
  word
    .trim()
    .toLowerCase()
    .replaceAll(/[\s_-]+/g, "-");

const amount = /^-?\d+(\.\d+)?( x \d+(\.\d+)?)* \S+$/;

/**
 * A quantity with its unit as the format writes it: `17.5kg`, `17,5 kg`, `14C`, `8 weeks`. The number stays the same.
 * Left alone as uncertain: a number without a unit, degrees without their scale, a comma before three digits (thousands
 * or thousandths?) and one in a size (decimal, or two dimensions?).
 */
export function sameQuantity(written: string, patterns: readonly string[]): string | undefined {
  const text = written.trim();
  if (/\d\s*(°|º|degrees?)$/i.test(text)) return undefined;
  const comma = /\d,\d/.test(text);
  if (comma && !/^-?\d+,\d{1,2}(?!\d)[^,]*$/.test(text)) return undefined;
  const sized = patterns.some((pattern) => new RegExp(pattern, "u").test("1 x 1 mm"));
  if (comma && sized) return undefined;
  const intended = suggestion(text, patterns);
  if (intended === undefined || !amount.test(intended)) return undefined;
  return numbers(intended) === numbers(text.replace(",", ".")) && intended !== written ? intended : undefined;
}

/** The numbers of a text, in order; a digit that belongs to a unit (m3) is none. */
const numbers = (text: string): string =>
  (text.replaceAll(/(?<=\d\s*)[x×*](?=\s*\d)/gi, " ").match(/(?<![a-z^\d.])\d+(\.\d+)?/gi) ?? []).join(" ");

/**
 * What other programs would read as a number, without the quotes: leading zeros, 12e3, 0x1f, a plus sign, more digits
 * than a number holds; and after the older YAML 1.1, which most of them follow, 1_000, 0b101 and 12:30 (minutes).
 */
const asNumber =
  /^[-+]?0[\d_]+$|^\+\d+$|^0x[\da-f_]+$|^0o[0-7]+$|^0b[01_]+$|^\d+(\.\d+)?e[-+]?\d+$|^\d{16,}$|^[-+]?\d[\d_]*_[\d_]*$|^[-+]?\d[\d_]*\.[\d_]*_[\d_]*$|^[-+]?\d[\d_]*(:[0-5]?\d)+(\.\d*)?$|^[-+]?(\d+\.|\.\d+)$|^[-+]?\.inf$|^\.nan$/i;

/** Words that YAML 1.1 takes for true or false. */
const asTruth = /^(y|yes|n|no|on|off)$/i;

/** Whether other programs would read a text without quotes as something else, and lose what was written. */
export const isReadOtherwise = (text: string): boolean => asNumber.test(text) || asTruth.test(text);
