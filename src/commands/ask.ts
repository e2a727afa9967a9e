/** Questions on a terminal, one line each. */
import { createInterface } from "node:readline/promises";
import { speak } from "./streams.ts";
import { UsageError } from "./usage-error.ts";

export interface Question {
  readonly key: string;
  readonly text: string;
  /** What is wrong with an answer, or undefined; an empty answer leaves it out where that is right. */
  readonly check?: (answer: string) => string | undefined;
}

/** Gives the answers by their keys; questions that were left out are not among them. */
export type Ask = (questions: readonly Question[]) => Promise<Readonly<Record<string, string>>>;

/** Whether somebody is there who can answer. */
export const canAsk = (): boolean => process.stdin.isTTY === true && process.stderr.isTTY === true;

/** @throws UsageError when the questions are broken off: nothing was written then */
export const askInTerminal: Ask = async (questions) => {
  const lines = createInterface({ input: process.stdin, output: process.stderr });
  const gone = new AbortController();
  lines.once("close", () => gone.abort());
  lines.once("SIGINT", () => lines.close());
  const answers: Record<string, string> = {};
  try {
    for (const { key, text, check } of questions) {
      let answer: string;
      for (;;) {
        answer = (await lines.question(`${text}: `, { signal: gone.signal })).trim();
        const wrong = check?.(answer);
        if (wrong === undefined) break;
        speak(`  ${wrong}\n`);
      }
      if (answer !== "") answers[key] = answer;
    }
  } catch {
    throw new UsageError("broken off; nothing was written");
  } finally {
    lines.close();
  }
  return answers;
};
