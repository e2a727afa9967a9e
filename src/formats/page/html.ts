/** HTML as a tagged template: whatever is put in is made visible and escaped, unless it is HTML made here. */
import { escapedMarkup } from "../../words/markup.ts";
import { visible } from "../../words/visible.ts";

export class Html {
  constructor(readonly text: string) {}
}

type Part = string | number | Html | readonly Html[];

export const html = (strings: TemplateStringsArray, ...parts: readonly Part[]): Html =>
  new Html(strings.map((text, index) => text + (index < parts.length ? textOf(parts[index]) : "")).join(""));

function textOf(part: Part | undefined): string {
  if (part instanceof Html) return part.text;
  if (typeof part === "object") return part.map(({ text }) => text).join("\n");
  return escapedMarkup(visible(String(part ?? "")));
}
