/** Who asks: a terminal key by key, a plain one line by line, or a test. */

export interface Choice {
  readonly key: string;
  readonly name: string;
  readonly value: string;
}

/** An answer, or the wish not to give one. */
export type Reply = { readonly answer: string } | "back" | "skip" | "stop";

export interface Asker {
  /** Says lines that stay above the questions. */
  say(lines: readonly Line[]): void;
  /** Asks for one key. */
  key(text: string, choices: readonly Choice[]): Promise<Reply>;
  /** Asks for a line. @param complete the words that a beginning may go on to */
  line(text: string, complete: (typed: string) => readonly string[]): Promise<Reply>;
}

export interface Line {
  readonly text: string;
  readonly is: "step" | "caution" | "plain" | "fault" | "notice";
}

/** More words than this are typed. */
const mostKeys = 9;

/**
 * A key for each word: its first letter that is free, or a number. `n` is normal or no, and `x` what was not looked at.
 * @returns undefined where there are too many
 */
export function keysFor(words: readonly string[]): readonly Choice[] | undefined {
  if (words.length === 0 || words.length > mostKeys) return undefined;
  const taken = new Set(["b", "q"]);
  return words.map((word, index) => {
    const letters = word === "not-looked-at" ? ["x"] : [...word];
    const key = letters.find((letter) => /[a-z]/.test(letter) && !taken.has(letter)) ?? String(index + 1);
    taken.add(key);
    return { key, name: word.replaceAll("-", " "), value: word };
  });
}
