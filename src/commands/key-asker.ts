/** The interview on a terminal, key by key. */
import {
  createPrompt,
  ExitPromptError,
  isBackspaceKey,
  isEnterKey,
  isTabKey,
  useKeypress,
  useRef,
  useState,
} from "@inquirer/core";
import type { Style } from "../formats/page/style.ts";
import { wrapped } from "../formats/page/width.ts";
import { type Asker, type Choice, commonStart, type Reply } from "../interview/index.ts";
import { visible } from "../words/visible.ts";
import { keysText, nearest } from "./asked-text.ts";
import { say } from "./line-asker.ts";

interface KeyQuestion {
  readonly text: string;
  readonly choices: readonly Choice[];
  readonly width: number;
}

const oneKey = createPrompt<Reply, KeyQuestion>(({ text, choices, width }, done) => {
  const [said, setSaid] = useState<string>();
  const isOver = useRef(false);
  const end = (shown: string, reply: Reply): void => {
    // Of keys that come in one go the first answers, and what is shown must be what is written.
    if (isOver.current) return;
    isOver.current = true;
    setSaid(shown);
    done(reply);
  };
  useKeypress((pressed, lines) => {
    lines.clearLine(0);
    if (isEnterKey(pressed)) return end("skipped", "skip");
    if (isBackspaceKey(pressed) || pressed.name === "left" || pressed.name === "b")
      return end("back", "back");
    if (pressed.name === "q") return end("stopped", "stop");
    const choice = choices.find(({ key }) => key === pressed.name);
    if (choice !== undefined) end(choice.name, { answer: choice.value });
  });
  const inLines = (shown: string): string => wrapped(shown, "", width - 1).join("\n");
  return said === undefined
    ? `${inLines(text)}\n${inLines(`(${keysText(choices)})`)} `
    : inLines(`${text}: ${said}`);
});

interface LineQuestion {
  readonly text: string;
  readonly complete: (typed: string) => readonly string[];
}

const oneLine = createPrompt<Reply, LineQuestion>(({ text, complete }, done) => {
  const [typed, setTyped] = useState("");
  const [said, setSaid] = useState<string>();
  const isOver = useRef(false);
  const end = (shown: string, reply: Reply): void => {
    // Of keys that come in one go the first answers, and what is shown must be what is written.
    if (isOver.current) return;
    isOver.current = true;
    setSaid(shown);
    done(reply);
  };
  const found = typed === "" ? [] : complete(typed);
  useKeypress((pressed, lines) => {
    const now = lines.line;
    if (isEnterKey(pressed)) {
      const answer = typed.trim();
      if (answer === "") return end("skipped", "skip");
      if (answer === "<") return end("back", "back");
      const [only] = found;
      // Of several that begin so nobody knows which is meant.
      if (found.length > 1) return lines.write(typed);
      return end(only ?? answer, { answer: only ?? answer });
    }
    if (isTabKey(pressed)) {
      const further = commonStart(found);
      lines.clearLine(0);
      const next = further.length > typed.length || found.length === 1 ? further : typed;
      lines.write(next);
      return setTyped(next);
    }
    setTyped(now);
  });
  if (said !== undefined) return `${text}: ${said}`;
  const below = found.length > 0 ? nearest(found) : "Enter alone skips, < goes back, Ctrl-C stops";
  return [`${text}: ${typed}`, below];
});

export function keyAsker(style: Style, width: number): Asker {
  const reply = async (asked: Promise<Reply>): Promise<Reply> => {
    try {
      return await asked;
    } catch (error) {
      if (error instanceof ExitPromptError) return "stop";
      throw error;
    }
  };
  const context = { output: process.stderr };
  return {
    say: (lines) => say(lines, style, width),
    key: (text, choices) => reply(oneKey({ text: visible(text), choices, width }, context)),
    line: (text, complete) => reply(oneLine({ text: visible(text), complete }, context)),
  };
}
