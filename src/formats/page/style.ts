/** Colours that carry no meaning of their own: every word stands without them. */
import { Chalk } from "chalk";
import type { Level } from "../../lint/index.ts";

export interface Style {
  heading(text: string): string;
  quiet(text: string): string;
  good(text: string): string;
  level(level: Level, text?: string): string;
}

/** A style with colours, or one that changes nothing. */
export function makeStyle(colour: boolean): Style {
  const chalk = new Chalk({ level: colour ? 1 : 0 });
  const paint = { error: chalk.red, warning: chalk.yellow, note: chalk.cyan };
  return {
    heading: (text) => chalk.bold(text),
    quiet: (text) => chalk.dim(text),
    good: (text) => chalk.green(text),
    level: (level, text = level) => paint[level](text),
  };
}
