/** Stable pseudonyms from a key: who has the key gets the same ones again, and nobody else can tell what they stand for. */
import { createHmac } from "node:crypto";

/** 32 bytes as hexadecimal digits, alone in its file. */
const form = /^[0-9a-f]{64}\s*$/i;

/** The key that a file holds; undefined where it holds none. */
export const keyIn = (text: string): string | undefined =>
  form.test(text) ? text.trim().toLowerCase() : undefined;

/** Consonants only: no tag, no word and no number can be read into a pseudonym. */
const letters = "bcdfghjkmnpqrstv";
const length = 16;

/** A day moves by at most half a year. */
const farthest = 182;
const msPerDay = 24 * 60 * 60 * 1000;
/** More are not remembered at once. */
const most = 20_000;

export class Pseudonyms {
  readonly #key: Buffer;
  readonly #keepsDays: boolean;
  readonly #known = new Map<string, string>();

  /** @param keepDays days stay as they are, where the season matters more than that a visit can be told by its day */
  constructor(key: string, { keepDays = false } = {}) {
    this.#key = Buffer.from(key, "hex");
    this.#keepsDays = keepDays;
  }

  /** `farm-bkdfqrstmnhgpvcj`: equal for equal names of one kind and place. */
  name(kind: string, within: string | undefined, name: string): string {
    const what = JSON.stringify([kind, within ?? null, name]);
    const known = this.#known.get(what);
    if (known !== undefined) return known;
    if (this.#known.size >= most) this.#known.clear();
    const made = `${kind}-${spelt(this.#digest(what))}`;
    this.#known.set(what, made);
    return made;
  }

  /** By what things are put into an order that says nothing of their names. */
  rank(name: string): string {
    return this.name("rank", undefined, name);
  }

  /** The same things in such an order. */
  shuffled<One>(all: readonly One[], nameOf: (one: One) => string): One[] {
    return all
      .map((one) => ({ one, rank: this.rank(nameOf(one)) }))
      .sort((a, b) => (a.rank < b.rank ? -1 : 1))
      .map(({ one }) => one);
  }

  /** A day or moment, moved by as many days as all others of its farm, so that what lies between them stays. */
  moved(farm: string | undefined, written: string): string {
    if (this.#keepsDays) return written;
    const day = new Date(`${written.slice(0, 10)}T00:00:00Z`);
    const moved = new Date(day.getTime() + this.#shift(farm) * msPerDay);
    return `${moved.toISOString().slice(0, 10)}${written.slice(10)}`;
  }

  /** From 182 days before to 182 after, never none. */
  #shift(farm: string | undefined): number {
    const drawn = this.#digest(JSON.stringify(["days", farm ?? null])).readUInt32BE(0) % (2 * farthest);
    return drawn < farthest ? drawn - farthest : drawn - farthest + 1;
  }

  #digest(what: string): Buffer {
    return createHmac("sha256", this.#key).update(what).digest();
  }
}

/** Four bits a letter. */
const spelt = (digest: Buffer): string =>
  Array.from(digest.toString("hex").slice(0, length), (digit) => letters[Number.parseInt(digit, 16)]).join(
    "",
  );
