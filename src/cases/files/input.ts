/** The one way to read what a file holds: a plain file of a bounded size is read, and nothing else is even opened. */
import { closeSync, constants, fstatSync, openSync, readSync, type Stats, statSync } from "node:fs";
import { sha256 } from "../../words/sha256.ts";
import { isLink } from "./file-kind.ts";
import { note } from "./witness.ts";

export type Input =
  | { readonly ok: true; readonly bytes: Buffer }
  | {
      readonly ok: false;
      /** What it is when it is no plain file, that it is too large, or why else it cannot be read. */
      readonly why: "folder" | "no file" | "too large" | "unreadable";
      readonly message: string;
      /** What is too large begins so. */
      readonly start?: Buffer;
    };

/** Tables, tracings and baselines; a tracing may hold the photograph it was drawn on. Beyond this it is something else. */
export const mostBytes = 20 * 1024 * 1024;

const reasons: Record<string, string> = {
  ENOENT: "there is no such file",
  ENOTDIR: "there is no such file",
  EACCES: "no permission to read it",
  EPERM: "no permission to read it",
  ELOOP: "it is a link that leads back to itself",
  ENAMETOOLONG: "its name is too long",
};

/**
 * Reads a file.
 * @param most the bytes that it may have; of a larger file no more than one byte beyond is read
 * @param streams whether a pipe that the program was started with (`<(…)`) may stand for a file: for what is read once
 */
export function readInput(location: string, most = mostBytes, { streams = false } = {}): Input {
  const read = readAt(location, most, streams);
  note(`bytes ${most}`, location, () => digestOf(read));
  return read;
}

/** Whether a question is about what a file holds. */
export const isOfBytes = (question: string): boolean => question.startsWith("bytes ");

/** Asks such a question once more. */
export function bytesAgain(question: string, location: string): string {
  const most = Number(question.slice("bytes ".length));
  return digestAtOnce(location, most) ?? digestOf(readAt(location, most, false));
}

/** Room for a file that is looked at and let go. */
const once = Buffer.allocUnsafeSlow(1 << 16);

/**
 * The digest of a plain file by one look, as most have none but the bytes they had. Reading from a place in it is refused
 * by a pipe, which is not waited for, and by a folder. Bytes that one look does not give make a digest that fits nothing.
 */
function digestAtOnce(location: string, most: number): string | undefined {
  let descriptor: number | undefined;
  try {
    descriptor = openSync(location, constants.O_RDONLY | (constants.O_NONBLOCK ?? 0));
    const read = readSync(descriptor, once, 0, once.length, 0);
    // Some devices give nothing, and others what is asked for.
    if (read === 0 || read >= Math.min(most, once.length)) return undefined;
    return sha256(once.subarray(0, read));
  } catch {
    return undefined;
  } finally {
    if (descriptor !== undefined) closeSync(descriptor);
  }
}

const digestOf = (read: Input): string =>
  read.ok ? sha256(read.bytes) : `${read.message} ${read.start === undefined ? "" : sha256(read.start)}`;

function readAt(location: string, most: number, streams: boolean): Input {
  let descriptor: number | undefined;
  try {
    const mayStream = streams && isOwnStream(location);
    // A device may act when it is only opened.
    const before = refusal(statSync(location), mayStream);
    if (before !== undefined) return before;
    // A pipe that took its place meanwhile is not waited for.
    descriptor = openSync(location, constants.O_RDONLY | (constants.O_NONBLOCK ?? 0));
    const opened = fstatSync(descriptor);
    const after = refusal(opened, mayStream);
    if (after !== undefined) return after;
    const bytes = readToEnd(descriptor, most, opened.size + 1);
    return bytes.length > most ? tooLarge(opened.size, most, bytes) : { ok: true, bytes };
  } catch (error) {
    const { code } = error as NodeJS.ErrnoException;
    if (code === undefined) throw error;
    const message =
      code === "ENOENT" && isLink(location)
        ? "it is a link to a file that does not exist"
        : (reasons[code] ?? `it cannot be read (${code})`);
    return { ok: false, why: "unreadable", message };
  } finally {
    if (descriptor !== undefined) closeSync(descriptor);
  }
}

/** What a shell makes of `<(…)`. Its other end is open before the program starts, so that its end is always met. */
export const isOwnStream = (path: string): boolean => /^\/(?:dev|proc\/self)\/fd\/\d+$/.test(path);

function refusal(status: Stats, mayStream: boolean): Input | undefined {
  if (status.isDirectory()) return { ok: false, why: "folder", message: "it is a folder" };
  if (status.isFile() || (mayStream && status.isFIFO())) return undefined;
  const kind = status.isFIFO() ? "a pipe" : status.isSocket() ? "a socket" : "a device";
  return { ok: false, why: "no file", message: `it is ${kind}, not a plain file` };
}

function tooLarge(size: number, most: number, start: Buffer): Input {
  const has = size > most ? `it has ${(size / 1e6).toFixed(1)} MB` : "it is too large";
  return { ok: false, why: "too large", message: `${has}; ${most / 1024 / 1024} MB is the limit`, start };
}

/** How long to wait for a writer that has nothing ready, in milliseconds. */
const pause = 5;

/**
 * Reads to the end, or one byte beyond the limit. A pipe that answers "not now" is asked again: the writer is only slower
 * than we are.
 * @param expected how many bytes will probably be there
 */
export function readToEnd(descriptor: number, most: number, expected = 1 << 16): Buffer {
  const first = Math.min(expected, most + 1);
  let bytes = Buffer.allocUnsafe(first);
  let total = 0;
  while (total <= most) {
    if (total === bytes.length) {
      const more = Buffer.allocUnsafe(Math.min(total * 2 + (1 << 16), most + 1));
      bytes.copy(more);
      bytes = more;
    }
    try {
      const read = readSync(descriptor, bytes, total, bytes.length - total, null);
      if (read === 0) break;
      total += read;
    } catch (error) {
      const { code } = error as NodeJS.ErrnoException;
      if (code === "EOF") break;
      if (code !== "EAGAIN") throw error;
      Atomics.wait(new Int32Array(new SharedArrayBuffer(4)), 0, 0, pause);
    }
  }
  return bytes.subarray(0, total);
}
