/** What can be said about a name: text in sections, who says so, and how sure that is. */
import type { Source } from "../knowledge/index.ts";

/** What can be explained, by what it belongs to, in this order: each kind, and the word that lists all of it. */
export const kindGroups = {
  "What is asked": {
    rule: "rules",
    "contradiction table": "contradiction-tables",
    alarm: "alarms",
    protocol: "protocols",
    fact: "facts",
  },
  Diseases: { disease: "diseases", "order of diseases": "order" },
  "The pig": {
    "selection basis": "selection-bases",
    "age class": "age-classes",
    "method of death": "methods-of-death",
  },
  "The body": { system: "systems", organ: "organs", step: "knife" },
  "Signs in life": { "sign family": "sign-families", sign: "signs" },
  Findings: {
    process: "processes",
    distribution: "distributions",
    margin: "margins",
    contour: "contours",
    shape: "shapes",
    colour: "colours",
    consistency: "consistencies",
    exudate: "exudates",
    severity: "severities",
    duration: "durations",
    certainty: "certainties",
  },
  "Other words": { "record word": "record-words", term: "terms" },
  "Scores and counts": { scale: "scales", indicator: "indicators" },
  Samples: {
    "sample material": "sample-materials",
    container: "containers",
    test: "tests",
    "time limit": "time-limits",
    "sample set": "sample-sets",
    "sample limit": "sample-limits",
    agent: "agents",
    "label sheet": "label-sheets",
    "parcel mark": "parcel-marks",
  },
  Settings: { setting: "settings" },
} as const;
type Groups = typeof kindGroups;
export type Kind = { [Group in keyof Groups]: keyof Groups[Group] }[keyof Groups];

/** By kind, the word that lists all of it. */
export const lists: ReadonlyMap<Kind, string> = new Map(
  Object.values(kindGroups).flatMap((group) => Object.entries(group) as [Kind, string][]),
);
export const kinds: readonly Kind[] = [...lists.keys()];

export interface Section {
  /** Null for the opening text. */
  readonly heading: string | null;
  readonly lines: readonly string[];
  /** Lines are YAML to be typed, not text to be wrapped. */
  readonly yaml?: true;
}

export interface Explanation {
  /** A case is one of the files, and no kind of name. */
  readonly kind: Kind | "case";
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
