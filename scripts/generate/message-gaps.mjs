// The gaps of a message in ICU syntax, by name: what the program must give.
import { IntlMessageFormat } from "intl-messageformat";

/** Kinds of the parser: 1 a word, 2 a number, 3 a date, 5 a choice, 6 a number that chooses. */
const kinds = { 1: "string | number", 2: "number", 3: "string", 5: "string", 6: "number" };

/** @returns by name, the TypeScript type of each gap */
export function messageGaps(text) {
  const gaps = {};
  const walk = (parts) => {
    for (const part of parts) {
      const kind = kinds[part.type];
      // A gap that is counted with and printed as well is a number.
      if (kind !== undefined && gaps[part.value] !== "number") gaps[part.value] = kind;
      for (const { value } of Object.values(part.options ?? {})) walk(value);
    }
  };
  walk(new IntlMessageFormat(text, "en").getAst());
  return gaps;
}
