import { formatPath, type Path } from "../../../cases/index.ts";
import { hiddenName } from "../../../words/hidden-characters.ts";
import { visible } from "../../../words/visible.ts";
import type { CaseRule, Report } from "../../rule.ts";

export const invisibleCharacter: CaseRule = {
  id: "invisible-character",
  scope: "case",
  family: "format",
  level: "warning",
  summary: "No text of a case holds a character that nobody sees.",
  protects:
    "Copied from a web page or a message, 2217 with a blank of no width in it is another pig to every table and search.",
  source: { cite: "Unicode, format characters", confidence: "common-practice" },
  bad: { case: 'pig: {tag: "9\\u200b01"}' },
  good: { case: 'pig: {tag: "901"}' },
  check(one, report) {
    look(one.record, [], report);
  },
};

/** Nearly all texts; a cheap look before the costly one. */
const plain = /^[ -~]*$/;

function look(value: unknown, path: Path, report: Report): void {
  if (typeof value === "string") {
    if (plain.test(value)) return;
    const shown = visible(value.replaceAll(/[\n\r\t]/g, " "));
    const code = /\\u\{([0-9a-f]+)\}/.exec(shown)?.[1];
    if (code !== undefined && !value.includes(`\\u{${code}}`))
      report(
        `${formatPath(path)}: "${shown.slice(0, 60)}" holds ${hiddenName(String.fromCodePoint(Number.parseInt(code, 16)))}. Type it anew.`,
        path,
      );
    return;
  }
  if (typeof value !== "object" || value === null) return;
  const entries = Array.isArray(value) ? value.entries() : Object.entries(value);
  for (const [key, inside] of entries) look(inside, [...path, key], report);
}
