/** A result may replace an earlier one, and nothing else that is there. */
import type { Keeps } from "./write-file.ts";

/**
 * @param result options and file as written, for the message
 * @param sample the result that is to be written, or a piece of it by which an earlier one is known
 */
export const unlessEarlier =
  (result: string, sample: string): Keeps =>
  (there) =>
    there === undefined || looksEarlier(there.toString("utf8", 0, looksAt), sample)
      ? undefined
      : `${result}: that file is already there and does not look like an earlier result; nothing was written. Remove it, or give the result a name of its own.`;

/** So many bytes are looked at. */
const looksAt = 2 ** 26;

/**
 * JSON begins with the same key; of any other kind of text, such as CSV with its head, one line is the same, but for
 * figures.
 */
function looksEarlier(there: string, sample: string): boolean {
  if (/^(?:\[\s*\]|\{\s*\})?$/.test(there.trim())) return true;
  const key = firstKey(sample);
  if (key !== undefined) return firstKey(there) === key;
  const known = new Set(tellingLines(sample));
  return tellingLines(there).some((line) => known.has(line));
}

/** The first key of JSON, and what it says where that tells what this is. */
const firstKey = (text: string): string | undefined =>
  /^\s*[[{][\s[{]*"((?:\$schema|output)"\s*:\s*"[^"]*|(?:[^"\\]|\\.)*)"/
    .exec(text)?.[1]
    ?.replaceAll(/\s/g, "");

/** The line that every text of `carcase lint` ends with, and the one that every diff begins with. */
const always = [/^(?:\d+ cases?:|no case was read)/, /^--- (?:a\/|\/dev\/null)/];

/** Lines that tell one text from another, without their figures. */
const tellingLines = (text: string): string[] =>
  text.split(/\r?\n/).flatMap((line) => {
    const known = always.find((pattern) => pattern.test(line));
    if (known !== undefined) return [known.source];
    const isTelling = !line.startsWith("<?xml") && /^(?:\P{L}*\p{L}){8}/u.test(line);
    return isTelling ? [line.replaceAll(/\d+/g, "0")] : [];
  });
