/** What can be said about a name: text in sections, who says so, and how sure that is. */
import type { Source } from "../knowledge/index.ts";

export const kinds = [
  "rule",
  "alarm",
  "protocol",
  "system",
  "organ",
  "scale",
  "indicator",
  "selection basis",
  "age class",
  "method of death",
  "fact",
  "signs",
  "word list",
  "sample material",
  "container",
  "test",
  "time limit",
] as const;
type Kind = (typeof kinds)[number];

export interface Section {
  /** Null for the opening text. */
  readonly heading: string | null;
  readonly lines: readonly string[];
  /** Lines are YAML to be typed, not text to be wrapped. */
  readonly yaml?: true;
}

export interface Explanation {
  readonly kind: Kind;
  readonly name: string;
  /** One line that says what it is. */
  readonly title: string;
  readonly sections: readonly Section[];
  readonly source: Source | null;
}

/** A thing that can be explained; its text is made only when it is asked for. */
export interface Topic {
  readonly kind: Kind;
  readonly name: string;
  readonly title: string;
  /** Other words that lead to it. */
  readonly aliases: readonly string[];
  explain(): Pick<Explanation, "sections" | "source">;
}

/** A section, or nothing when it has no lines. */
export function section(heading: string | null, lines: readonly string[]): Section[] {
  return lines.length === 0 ? [] : [{ heading, lines }];
}

/** YAML that a person would type. */
export const yamlSection = (heading: string, text: string | undefined): Section[] =>
  text === undefined ? [] : [{ heading, lines: text.trimEnd().split("\n"), yaml: true }];
