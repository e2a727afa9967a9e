/** The morphologic diagnoses of a case, with the organ that each names before its colon. */
import type { Case, Path } from "../cases/index.ts";
import { diagnosisLimits, type PlacedOrgan } from "../knowledge/index.ts";
import { wordIn } from "../notes/index.ts";
import { fact } from "./fact.ts";
import { namedOrgans } from "./named-organs.ts";

type Diagnosed = NonNullable<NonNullable<Case["record"]["diagnosis"]>["aetiologic"]>[number];
type Reasoned = Exclude<Diagnosed, string>;

/** The words of a diagnosis, whether or not it says what it rests on. */
export const textOf = (entry: Diagnosed): string => (typeof entry === "string" ? entry : entry.text);

const kindsOfDiagnosis = ["morphologic", "aetiologic", "disease"] as const;

/** A diagnosis of any kind with what it says of itself. */
export interface StatedDiagnosis extends Omit<Reasoned, "text"> {
  readonly kind: (typeof kindsOfDiagnosis)[number];
  readonly text: string;
  /** The text without what it denies. */
  readonly said: string;
  readonly path: Path;
  /** Whether it was written with keys of its own, and not as a mere text. */
  readonly isReasoned: boolean;
}

/** Every diagnosis that names something; pending and what only denies are none. */
export const statedDiagnoses = fact((one: Case): readonly StatedDiagnosis[] =>
  kindsOfDiagnosis.flatMap((kind) =>
    (one.record.diagnosis?.[kind] ?? []).flatMap((entry, index) => {
      const text = textOf(entry);
      const said = undenied(text);
      if (said === undefined || isAwaited(text)) return [];
      const own = typeof entry === "string" ? {} : entry;
      const path = ["diagnosis", kind, index];
      return { ...own, kind, text, said, path, isReasoned: typeof entry !== "string" };
    }),
  ),
);

export interface MorphologicDiagnosis {
  readonly text: string;
  readonly path: Path;
  /** What stands before the colon; undefined without a colon. */
  readonly place: string | undefined;
  /** What stands behind it, or the whole, without what it denies. */
  readonly rest: string;
  /** The whole, without what it denies. */
  readonly said: string;
  readonly organs: readonly PlacedOrgan[];
}

/** One that says what is not there, and nothing else, is none: `no pneumonia`. */
export const morphologicDiagnoses = fact((one: Case): readonly MorphologicDiagnosis[] =>
  (one.record.diagnosis?.morphologic ?? []).flatMap((said, index) => {
    const text = textOf(said);
    const colon = text.indexOf(":");
    const place = colon < 0 ? undefined : text.slice(0, colon).trim();
    const rest = undenied(text.slice(colon + 1));
    if (rest === undefined) return [];
    return {
      text,
      path: ["diagnosis", "morphologic", index],
      place,
      rest,
      said: place === undefined ? rest : `${place}: ${rest}`,
      organs: place === undefined ? [] : namedOrgans(place),
    };
  }),
);

/** A text without the clauses that deny; undefined where it does nothing else. */
function undenied(text: string): string | undefined {
  const clauses = text.split(/[,;]/);
  if (clauses.some(isAllDenied)) return undefined;
  const left = clauses.filter((clause) => !isDenial(clause));
  const rest = left.join(",").trim();
  return rest === "" && left.length < clauses.length ? undefined : rest;
}

const isDenial = (clause: string): boolean =>
  /^\s*(?:no|not|without|free of|negative for|kein|keine|keinen|ohne)\b/i.test(clause) ||
  /\b(?:absent|ruled out|excluded|not seen|not found)$/i.test(clause.trimEnd());

/** `no lesion seen`, `no gross lesions`, `kein Befund`: what else the text says is no lesion either. */
const isAllDenied = (clause: string): boolean =>
  isDenial(clause) && /\b(?:lesions?|befund)(?: seen| found| by eye)?$/i.test(clause.trimEnd());

export interface NamedCause {
  readonly text: string;
  /** The text without what it denies. */
  readonly said: string;
  readonly path: Path;
  /** What it rests on: by itself, or as the whole diagnosis. */
  readonly basis: Reasoned["basis"];
}

/** Causes that are named: everything under aetiologic but pending, unknown and the like. */
export function namedCauses(one: Case): NamedCause[] {
  return (one.record.diagnosis?.aetiologic ?? []).flatMap((entry, index) => {
    const text = textOf(entry);
    const said = undenied(text);
    return said === undefined || /^\s*(?:pending|open|unknown|undetermined|none|not|no)\b/i.test(text)
      ? []
      : [
          {
            text,
            said,
            path: ["diagnosis", "aetiologic", index],
            basis: (typeof entry === "string" ? undefined : entry.basis) ?? one.record.diagnosis?.basis,
          },
        ];
  });
}

/** The kinds of agents that a cause names, each with the tests that show one; none for what the eye can prove. */
export const agentsIn = ({ said }: NamedCause) =>
  Object.values(diagnosisLimits.agents).filter(({ words }) => wordIn(said, words) !== undefined);

/** Whether the diagnosis waits for the laboratory. */
export const isPending = (one: Case): boolean =>
  one.record.diagnosis?.basis === "pending" ||
  (one.record.diagnosis?.aetiologic ?? []).some((entry) => isAwaited(textOf(entry)));

/** Whether a text says that the answer is awaited. */
export const isAwaited = (text: string): boolean => /^\s*pending\b/i.test(text);

/** Progressive atrophic rhinitis, called by that name: an aetiologic word, for it means the toxin. */
export const isCalledProgressive = (text: string): boolean =>
  /\bprogressive\b/i.test(text) &&
  !/\b(non|not)[\s-]+progressive\b/i.test(text) &&
  /rhinitis|conch|turbinate/i.test(text);
