/**
 * What was asked of the file system while something was worked out, and what the answers were. As long as they are the
 * same, it need not be worked out again.
 */
import { resolve } from "node:path";

/** A question, the path that it was about, and the answer. */
export type Noted = readonly [question: string, location: string, answer: string];

/** A question whose answer is put into words when it is first wanted. */
export class Note {
  readonly question: string;
  readonly #path: string;
  #say: (() => string) | undefined;
  #answer = "";

  constructor(question: string, path: string, say: () => string) {
    this.question = question;
    this.#path = path;
    this.#say = say;
  }

  get location(): string {
    return resolve(this.#path);
  }

  get noted(): Noted {
    if (this.#say !== undefined) this.#answer = this.#say();
    this.#say = undefined;
    return [this.question, this.location, this.#answer];
  }
}

let notes: Note[] | undefined;

/** Notes an answer, where somebody listens. */
export function note(question: string, path: string, say: () => string): void {
  notes?.push(new Note(question, path, say));
}

/** Does a piece of work, and says what was asked meanwhile. */
export function witnessed<T>(work: () => T): { readonly value: T; readonly notes: readonly Note[] } {
  const around = notes;
  const made: Note[] = [];
  notes = made;
  try {
    return { value: work(), notes: made };
  } finally {
    notes = around;
  }
}

/** A value that is worked out when it is first used. What was asked for it counts for each piece of work that uses it. */
export class Remembered<T> {
  #made: { readonly value: T; readonly notes: readonly Note[] } | undefined;
  readonly #make: () => T;

  constructor(make: () => T) {
    this.#make = make;
  }

  get value(): T {
    this.#made ??= notes === undefined ? { value: this.#make(), notes: [] } : witnessed(this.#make);
    if (notes !== undefined) for (const one of this.#made.notes) notes.push(one);
    return this.#made.value;
  }
}
