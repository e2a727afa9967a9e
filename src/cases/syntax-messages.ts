/** What the parser's error codes mean to somebody who types case files. */
const messages: Record<string, string> = {
  TAB_AS_INDENT: "a tab is used to indent; use spaces",
  DUPLICATE_KEY: "this key stands twice in the same place; keep one",
  BAD_INDENT: "the indentation does not fit the lines above; line up keys that belong together",
  MULTILINE_IMPLICIT_KEY: "a key must stand on one line; is a colon or a quote missing above?",
  MISSING_CHAR: "a quote, bracket or colon is missing here",
  BAD_ALIAS: "this reference (*) has no anchor (&) above it",
  UNEXPECTED_TOKEN: "this does not belong here; is a quote, comma or bracket missing?",
  MULTIPLE_DOCS: "a second document begins here; write one case a file",
  TAG_RESOLVE_FAILED: "tags (!) are not read; take it out",
  BAD_DIRECTIVE: "directives (%) are not read; take it out",
  MISSING_ANCHOR_NAME: "an anchor (&) without a name",
  BLOCK_AS_IMPLICIT_KEY: "a list or a nested key begins on the line of another key; begin a new line",
  BLOCK_IN_FLOW: "an indented block inside brackets; close the bracket first",
  BAD_SCALAR_START: "a value cannot begin with this character; put it in quotes",
  BAD_DQ_ESCAPE: "this escape in a quoted text is unknown; use single quotes",
  KEY_OVER_1024_CHARS: "a key of more than 1024 characters; is a colon missing?",
  RESOURCE_EXHAUSTION: "nested too deeply; no case file is",
};

/** The message for a parser error; an unknown code keeps the parser's own words. */
export function syntaxMessage(code: string, fallback: string): string {
  return messages[code] ?? fallback;
}
