/** Where a text stops being JSON. The parser of the language says that by quoting the text, and not always with a place. */
import { TextLines } from "../cases/yaml/text-lines.ts";
import { type Place, wholeFile } from "./problem.ts";

const blanks = /[ \t\r\n]*/y;
const token =
  /([{}[\],:])|("[^"\\\u0000-\u001f]*(?:\\(?:["\\/bfnrt]|u[\da-fA-F]{4})[^"\\\u0000-\u001f]*)*")|-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?|true|false|null/y;

/** What may come next, and how it is called. */
const wants = {
  value: { may: "{[tw", what: "a value is missing here, or is not written as JSON writes it" },
  "value or end": { may: "{[tw]", what: "a value is missing here, or is not written as JSON writes it" },
  key: { may: "t", what: 'a name in double quotes must stand here, and no comma before a closing "}"' },
  "key or end": { may: "t}", what: "a name in double quotes must stand here" },
  colon: { may: ":", what: 'a ":" is missing here' },
  "comma or ]": { may: ",]", what: 'a comma or "]" is missing here' },
  "comma or }": { may: ",}", what: 'a comma or "}" is missing here' },
  nothing: { may: "", what: "more follows here after the end" },
} as const;

/** @param text that `JSON.parse` refuses */
export function jsonFault(text: string): { readonly what: string; readonly place: Place } {
  const open: ("]" | "}")[] = [];
  let want: keyof typeof wants = "value";
  for (let at = 0; ; ) {
    blanks.lastIndex = at;
    blanks.exec(text);
    token.lastIndex = blanks.lastIndex;
    const [found, sign, quoted] = token.exec(text) ?? [];
    const kind = sign ?? (quoted === undefined ? "w" : "t");
    if (found === undefined || !wants[want].may.includes(kind)) {
      at = blanks.lastIndex;
      if (at >= text.length) return { what: "it ends too early", place: wholeFile };
      return { what: wants[want].what, place: new TextLines(text).at(at) };
    }
    at = token.lastIndex;
    if (kind === "{" || kind === "[") {
      open.push(kind === "{" ? "}" : "]");
      want = kind === "{" ? "key or end" : "value or end";
    } else if (kind === ":") want = "value";
    else if (kind === ",") want = open.at(-1) === "}" ? "key" : "value";
    else if (kind === "t" && (want === "key" || want === "key or end")) want = "colon";
    else {
      if (kind === "}" || kind === "]") open.pop();
      const last = open.at(-1);
      want = last === undefined ? "nothing" : `comma or ${last}`;
    }
  }
}
