/** What keeps tracings from being measured, for people: file, place, what is wrong and what to do. */
import type { Measurements } from "../../measure/index.ts";
import { visible } from "../../words/visible.ts";
import type { Style } from "../page/style.ts";

export function measureProblems({ problems }: Measurements, style: Style): string {
  return problems
    .map(({ owner, kind, file, line, column, message }) => {
      const named = owner === null ? "" : ` (named by ${visible(owner.file)})`;
      const place = line === 0 ? "" : `:${line}:${column}`;
      return `${style.heading(`${visible(file)}${place}`)}${named}: ${style.level("error", "not measured")}: ${visible(message)} [${kind}]\n`;
    })
    .join("");
}
