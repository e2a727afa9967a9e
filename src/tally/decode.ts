/** Bytes of a table as text, in whichever way a spreadsheet saved it. */
import { isUtf8 } from "node:buffer";

export interface Decoded {
  readonly text: string;
  /** For people: `UTF-8`, or with a word by which they see whether it is right. */
  readonly encoding: string;
}

/** @returns the reason in a sentence where it is no text that can be told */
export function decodeTable(bytes: Buffer): Decoded | string {
  const [first, second] = bytes;
  if (first === 0xff && second === 0xfe) return utf16(bytes.subarray(2), "le");
  if (first === 0xfe && second === 0xff) return utf16(bytes.subarray(2), "be");
  if (bytes.includes(0)) {
    // Letters of ours have a zero beside them, before or behind.
    const start = bytes.subarray(0, 200);
    const zeros = (odd: number): number => start.filter((byte, at) => byte === 0 && at % 2 === odd).length;
    if (zeros(1) > start.length / 3 && zeros(0) === 0) return utf16(bytes, "le");
    if (zeros(0) > start.length / 3 && zeros(1) === 0) return utf16(bytes, "be");
    return bytes.subarray(0, 2).toString("latin1") === "PK"
      ? "it is a workbook and no text; save the sheet as CSV"
      : "it is no text; save the sheet as CSV";
  }
  if (bytes.subarray(0, 2).toString("latin1") === "PK")
    return "it is a workbook and no text; save the sheet as CSV";
  if (isUtf8(bytes)) return { text: bytes.toString("utf8").replace(/^\ufeff/, ""), encoding: "UTF-8" };
  return windows1252(bytes);
}

function utf16(bytes: Buffer, end: "le" | "be"): Decoded | string {
  try {
    return { text: new TextDecoder(`utf-16${end}`, { fatal: true }).decode(bytes), encoding: "UTF-16" };
  } catch {
    return "it begins as UTF-16 and is none; save the sheet as CSV in UTF-8";
  }
}

/** What stands there from 0x80; where nothing does, the text is none of this kind. Node 20 reads control characters here. */
const high = "€ ‚ƒ„…†‡ˆ‰Š‹Œ Ž  ‘’“”•–—˜™š›œ žŸ";

function windows1252(bytes: Buffer): Decoded | string {
  const text = bytes
    .toString("latin1")
    .replaceAll(/[\x80-\x9f]/g, (char) => high.charAt(char.charCodeAt(0) - 0x80).trim() || "\ufffd");
  if (text.includes("\ufffd"))
    return "its letters are neither UTF-8 nor windows-1252; save the sheet as CSV in UTF-8";
  const at = Math.max(0, text.search(/[^\0-\x7f]/));
  const words = text.slice(Math.max(0, at - 15), at + 15).split(/[\s,;|"]/);
  const word = words.find((one) => /[^\0-\x7f]/.test(one)) ?? "";
  return { text, encoding: `windows-1252, so that "${word}" stands there` };
}
