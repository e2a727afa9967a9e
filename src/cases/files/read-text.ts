/** Reads a file as text, and says plainly why it cannot be read. */
import { isUtf8 } from "node:buffer";
import { hiddenCharacter, hiddenName } from "../../words/hidden-characters.ts";
import type { Place } from "../yaml/document.ts";
import { TextLines } from "../yaml/text-lines.ts";
import { readInput } from "./input.ts";

/** A case file has a few kilobytes; beyond this it is something else. */
export const maxBytes = 2 * 1024 * 1024;
/** More lines than this with the same trouble are not listed one by one. */
const maxLines = 20;

/** Why a text cannot be read; without place and excerpt when the whole file is meant. */
interface TextFault {
  readonly message: string;
  readonly place?: Place;
  readonly excerpt?: string;
}

export type TextResult =
  | { readonly ok: true; readonly text: string }
  | { readonly ok: false; readonly faults: readonly TextFault[] };

/**
 * Reads one file.
 * @param streams see `readInput`
 * @returns the text without byte order mark, or the reason in plain words
 */
export function readText(file: string, streams = false): TextResult {
  const read = readInput(file, maxBytes, { streams });
  if (read.ok) return decode(read.bytes);
  const { why, message } = read;
  if (why === "folder") return refused(`${message}; a case is a plain file`);
  return refused(
    why === "too large" ? message.replace("; ", "; a case file has a few kilobytes, and ") : message,
  );
}

/** Decodes UTF-8, with or without byte order mark, and refuses what is not text. */
export function decode(bytes: Uint8Array): TextResult {
  if (bytes.length > maxBytes) return refused("it has more than 2 MB; a case file has a few kilobytes");
  if ((bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff))
    return refused("it is saved as UTF-16; save it as UTF-8");
  if (bytes.includes(0)) return refused("it is not a text file; a case is a text file saved as UTF-8");
  if (!isUtf8(bytes)) return notUtf8(bytes);
  const text = Buffer.from(bytes.buffer, bytes.byteOffset, bytes.byteLength)
    .toString("utf8")
    .replace(/^\ufeff/, "");
  const hidden = hiddenFaults(text);
  if (hidden.length > 0) return { ok: false, faults: hidden };
  if (text.trim() === "") return refused("the file is empty");
  return { ok: true, text };
}

const refused = (message: string): TextResult => ({ ok: false, faults: [{ message }] });

/** The first line that is not UTF-8, shown with a mark in place of what cannot be read. */
function notUtf8(bytes: Uint8Array): TextResult {
  const lines = new TextLines(new TextDecoder("utf-8").decode(bytes));
  const strict = new TextDecoder("utf-8", { fatal: true });
  let number = 1;
  for (let start = 0; start < bytes.length; number++) {
    const feed = bytes.indexOf(0x0a, start);
    const end = feed < 0 ? bytes.length : feed;
    try {
      strict.decode(bytes.subarray(start, end));
    } catch {
      break;
    }
    start = end + 1;
  }
  const excerpt = lines.line(number);
  const column = excerpt.indexOf("\ufffd") + 1;
  const message = "it is not saved as UTF-8, as the letters from here on show; save it as UTF-8";
  return { ok: false, faults: [{ message, place: { line: number, column, length: 1 }, excerpt }] };
}

/** One fault for each line with a character that cannot be seen. */
function hiddenFaults(text: string): TextFault[] {
  const faults: TextFault[] = [];
  const lines = new TextLines(text);
  for (let from = 0; from < text.length; ) {
    const found = hiddenCharacter.exec(text.slice(from));
    if (found === null) break;
    const start = from + found.index;
    const place = lines.place({ start, end: start + 1 });
    faults.push({ message: hiddenMessage(found[0]), place, excerpt: lines.line(place.line) });
    const next = text.indexOf("\n", start);
    if (next < 0 || faults.length >= maxLines) break;
    from = next + 1;
  }
  return faults;
}

const hiddenMessage = (character: string): string =>
  character === "\r"
    ? "its lines end as on an old Macintosh (CR alone); save it with LF or CRLF line ends"
    : `this line holds ${hiddenName(character)}; take it out`;
