/** The interview on a terminal that shows nothing but lines: a key and Enter. */
import { createInterface, type Interface } from "node:readline/promises";
import type { Style } from "../formats/page/style.ts";
import { wrapped } from "../formats/page/width.ts";
import type { Asker, Line, Reply } from "../interview/index.ts";
import { visible } from "../words/visible.ts";
import { keysText, nearest } from "./asked-text.ts";
import { speak } from "./streams.ts";

export function lineAsker(style: Style, width: number): Asker {
  const line = async (text: string): Promise<Reply> => {
    const lines: Interface = createInterface({
      input: process.stdin,
      output: process.stderr,
      terminal: false,
    });
    const gone = new AbortController();
    lines.once("close", () => gone.abort());
    lines.once("SIGINT", () => lines.close());
    try {
      const answer = (await lines.question(`${visible(text)}: `, { signal: gone.signal })).trim();
      return answer === "" ? "skip" : answer === "<" ? "back" : { answer };
    } catch {
      return "stop";
    } finally {
      lines.close();
    }
  };
  return {
    say: (all) => say(all, style, width),
    async key(text, choices) {
      speak(`${wrapped(`${visible(text)} (${keysText(choices)})`, "", width).join("\n")}\n`);
      for (;;) {
        const reply = await line("Key");
        if (typeof reply === "string") return reply;
        if (reply.answer === "b") return "back";
        if (reply.answer === "q") return "stop";
        const choice = choices.find(({ key }) => key === reply.answer);
        if (choice !== undefined) return { answer: choice.value };
        speak(`There is no ${visible(reply.answer)} here.\n`);
      }
    },
    async line(text, complete) {
      for (;;) {
        const reply = await line(text);
        const found = typeof reply === "string" ? [] : complete(reply.answer);
        if (found.length < 2) return reply;
        speak(`${nearest(found)}\n`);
      }
    },
  };
}

/** Lines above the questions, as wide as the terminal. */
export function say(lines: readonly Line[], style: Style, width: number): void {
  for (const { text, is } of lines) {
    const indent = /^ */.exec(text)?.[0] ?? "";
    const shown = is === "notice" ? [text] : wrapped(visible(text.trimStart()), indent, width, `${indent}  `);
    const styled = shown.map((line) =>
      is === "step" ? `\n${style.heading(line)}` : is === "fault" ? style.level("warning", line) : line,
    );
    speak(styled.map((line) => `${line}\n`).join(""));
  }
}
