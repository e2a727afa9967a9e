/** How the interview shows what may be answered. */
import type { Choice } from "../interview/index.ts";

export const keysText = (choices: readonly Choice[]): string =>
  [...choices.map(({ key, name }) => `${key} ${name}`), "Enter skip", "b back", "q stop"].join(", ");

/** More words than this are not shown. */
const most = 12;

export const nearest = (words: readonly string[]): string =>
  words.length > most ? `${words.slice(0, most).join(" ")} and ${words.length - most} more` : words.join(" ");
