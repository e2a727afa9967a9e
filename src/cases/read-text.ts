/** Reads a file as text, and says plainly why it cannot be read. */
import { readFileSync, statSync } from "node:fs";

/** A case file has a few kilobytes; beyond this it is something else. */
export const maxBytes = 2 * 1024 * 1024;

export type TextResult =
  | { readonly ok: true; readonly text: string }
  | { readonly ok: false; readonly message: string };

const refusals: Record<string, string> = {
  ENOENT: "there is no such file",
  EACCES: "no permission to read it",
  EPERM: "no permission to read it",
  ELOOP: "it is a link that leads back to itself",
  EISDIR: "it is a folder",
  ENAMETOOLONG: "its name is too long",
};

/**
 * Reads one file.
 * @returns the text without byte order mark, or the reason in plain words
 */
export function readText(file: string): TextResult {
  try {
    const status = statSync(file);
    if (!status.isFile()) return { ok: false, message: "it is not a plain file" };
    if (status.size > maxBytes)
      return {
        ok: false,
        message: `it has ${Math.round(status.size / 1e6)} MB; a case file has a few kilobytes, and 2 MB is the limit`,
      };
    return decode(readFileSync(file));
  } catch (error) {
    const code = (error as NodeJS.ErrnoException).code;
    if (code === undefined) throw error;
    return { ok: false, message: refusals[code] ?? `it cannot be read (${code})` };
  }
}

/** Decodes UTF-8, with or without byte order mark, and refuses what is not text. */
export function decode(bytes: Uint8Array): TextResult {
  if ((bytes[0] === 0xff && bytes[1] === 0xfe) || (bytes[0] === 0xfe && bytes[1] === 0xff))
    return { ok: false, message: "it is saved as UTF-16; save it as UTF-8" };
  if (bytes.includes(0)) return { ok: false, message: "it is not a text file" };
  let text: string;
  try {
    text = new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    return { ok: false, message: "it is not saved as UTF-8; save it as UTF-8" };
  }
  const control = controlCharacter.exec(text);
  if (control !== null) {
    const line = text.slice(0, control.index).split("\n").length;
    const code = control[0].codePointAt(0) ?? 0;
    return {
      ok: false,
      message: `line ${line} holds a control character (U+${code.toString(16).toUpperCase().padStart(4, "0")}); take it out`,
    };
  }
  if (text.trim() === "") return { ok: false, message: "the file is empty" };
  return { ok: true, text };
}

/** Control characters other than tab and line ends, and the marks that turn the direction of text. */
export const controlCharacter =
  /[\u0000-\u0008\u000b\u000c\u000e-\u001f\u007f-\u009f\u2028-\u202e\u2066-\u2069]/;
