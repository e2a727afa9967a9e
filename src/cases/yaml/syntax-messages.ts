/**
 * What an error of the YAML parser means to somebody who types case files: the parser says where it stopped, people
 * want to know what to write and on which line. Errors that only follow from another one are left out.
 */
import { lateQuote, type OpenMarks, openMarks } from "./open-marks.ts";
import type { Span } from "./source-tree.ts";
import type { SyntaxMessage } from "./syntax-message.ts";
import type { TextLines } from "./text-lines.ts";

/** An error as the parser reports it. */
export interface ParserError extends Span {
  readonly code: string;
  readonly message: string;
}

/** What the parser's error codes mean when nothing more is known. */
const messages: Record<string, string> = {
  TAB_AS_INDENT: "a tab is used to indent; use spaces",
  BAD_INDENT:
    "this line does not line up with the lines above; indent keys that belong together by the same number of spaces",
  MULTILINE_IMPLICIT_KEY: "a key must stand on one line; is a colon or a quote missing above?",
  MISSING_CHAR: "a quote, bracket, comma or colon is missing before this",
  BAD_ALIAS: "text that begins with * or & needs quotes",
  UNEXPECTED_TOKEN: "this does not belong here; is a quote, comma or bracket missing before it?",
  BLOCK_AS_IMPLICIT_KEY:
    "a list cannot begin on the line of its key; begin it on a new line, or write it in brackets: [a, b]",
  BLOCK_IN_FLOW: "a comma is missing between two keys inside brackets",
  BAD_SCALAR_START: "text cannot begin with this character; put it in quotes",
  BAD_DQ_ESCAPE:
    "a backslash inside double quotes begins a code; put the text in single quotes: 'C:\\photos'",
  KEY_OVER_1024_CHARS: "a key of more than 1024 characters; is a colon or a quote missing?",
  RESOURCE_EXHAUSTION: "nested too deeply, which no case file is",
};

/** The same by the parser's own words, where one code has several meanings. */
const byWording: readonly (readonly [RegExp, string])[] = [
  [
    /^Sequence item without - indicator/,
    "this line does not line up; indent it like the first key of its list entry, or begin it with a hyphen",
  ],
  [
    /^Comments must be separated/,
    "a space is missing before #; if # belongs to the text, put the text in quotes",
  ],
  [/^Missing space after :/, "a space is missing after the colon"],
  [/^Missing ,/, "a comma is missing before this"],
  [/^Unexpected (,|empty item) in/, "there is a comma too many"],
  [
    /^Unexpected flow-(map|seq)-end/,
    "this bracket closes nothing; take it out, or add the one that opens it",
  ],
  [
    /^Unexpected block-seq-ind/,
    "a list cannot begin on the line of its key; begin it on a new line, or write it in brackets: [a, b]",
  ],
  [
    /^Block scalar header/,
    "after | or > the text begins on the next line; if the sign belongs to the text, put the text in quotes",
  ],
  [/must be sufficiently indented and end with/, "a closing bracket is missing before this"],
  [/^Missing closing .quote/, "a closing quote is missing"],
];

/** Nobody reads more; and every error is held against others. */
const mostErrors = 1000;

/** Sentences for the errors of one text, each mistake once, in the order of the text. */
export function syntaxMessages(
  errors: readonly ParserError[],
  open: OpenMarks,
  text: string,
  lines: TextLines,
): SyntaxMessage[] {
  const sorted = [...errors].sort((a, b) => a.start - b.start).slice(0, mostErrors);
  const late = lateQuote(sorted, open, lines);
  if (late !== undefined)
    return [
      ...singly(
        sorted.filter(({ start }) => start < late.start),
        text,
        lines,
      ),
      late,
    ];
  const marks = openMarks(open);
  const follows = ({ start, code, message }: ParserError): boolean =>
    (code !== "TAB_AS_INDENT" && marks.some((mark) => mark.start < start && start <= mark.end)) ||
    (marks.length > 0 && /^Missing closing|must be sufficiently indented and end with/.test(message));
  return [
    ...singly(
      sorted.filter((error) => !follows(error)),
      text,
      lines,
    ),
    ...marks,
  ];
}

/** One message for each line: what the parser says after it has stumbled there follows from the first. */
function singly(errors: readonly ParserError[], text: string, lines: TextLines): SyntaxMessage[] {
  const line = (offset: number): number => lines.at(offset).line;
  const starts = (code: string): Set<number> =>
    new Set(errors.filter((error) => error.code === code).map(({ start }) => start));
  const tabs = new Set([...starts("TAB_AS_INDENT")].map(line));
  const nested = starts("BLOCK_AS_IMPLICIT_KEY");
  const overLines = starts("MULTILINE_IMPLICIT_KEY");
  const done = new Set<number>();
  return errors.flatMap((error) => {
    const { code, start } = error;
    if (code !== "TAB_AS_INDENT" && tabs.has(line(start))) return [];
    if (code === "BLOCK_AS_IMPLICIT_KEY" && overLines.has(start)) return [];
    const deeper = code === "MULTILINE_IMPLICIT_KEY" && nested.has(start);
    const message = deeper ? indentedDeeper(error, text) : explain(error, text);
    if (done.has(line(message.start))) return [];
    done.add(line(message.start));
    return [message];
  });
}

function explain(error: ParserError, text: string): SyntaxMessage {
  const { start, end, code } = error;
  const said = (message: string): SyntaxMessage => ({ start, end, message });
  const written = firstLine(text, start);
  if (/^[“„‟«‘‚‛]/u.test(written)) return { ...said(curlyQuotes), end: start + written.length };
  if (/^Implicit (keys need|map keys need)/.test(error.message) && !/[[{"']/.test(written))
    return { ...said(colonMissing(written)), end: start + written.length };
  if (/^Nested mappings are not allowed/.test(error.message))
    return {
      ...said(
        "there is a second colon on this line; if it belongs to the text, put the text in quotes, else begin a new line",
      ),
      end: start + written.length,
    };
  if (code === "BLOCK_IN_FLOW" && /^-\s/.test(written))
    return said("a list inside brackets is written in brackets too: [a, b]");
  if (/^Unexpected scalar at node end/.test(error.message) && text[start - 1] === "'")
    return said(
      "the text ended at the quote before this; write an apostrophe inside single quotes twice (''), or use double quotes",
    );
  if (/^A block sequence/.test(error.message)) return said(entryAmongKeys);
  if (code === "BAD_ALIAS" && /^\*\s/.test(written))
    return said("a list entry begins with a hyphen (-), not with a star");
  const worded = byWording.find(([wording]) => wording.test(error.message));
  return said(worded?.[1] ?? messages[code] ?? error.message);
}

/** A line whose value runs on into a line with a colon of its own: that line is indented too far. */
function indentedDeeper({ start, end }: ParserError, text: string): SyntaxMessage {
  const next = /\n[ ]*/.exec(text.slice(start, end));
  const at = next === null ? start : start + next.index + next[0].length;
  return {
    start: at,
    end: at + firstLine(text, at).length,
    message:
      "this line is indented deeper than the line above, which has a value already; line it up with the keys it belongs to",
  };
}

const curlyQuotes = 'curly quotes do not hold a text together; write straight ones: "text"';

const entryAmongKeys = "a list entry (-) stands among keys; indent it under the key that it belongs to";

function colonMissing(written: string): string {
  if (/^-\s/.test(written)) return entryAmongKeys;
  const glued = /^([\w.-]+):(\S.*)$/.exec(written);
  return glued === null
    ? "a colon is missing on this line; write key: value"
    : `a space is missing after the colon; write ${glued[1]}: ${glued[2]}`;
}

/** The rest of a line, or as much of it as matters. */
const firstLine = (text: string, start: number): string =>
  (/^[^\r\n]*/.exec(text.slice(start, start + 500))?.[0] ?? "").trimEnd();
