/** One disease against a record: what speaks for it and against it, and what nobody looked at. */

import { findAlarms } from "../alarms/index.ts";
import type { Criterion, Disease, Statement } from "../knowledge/diseases.ts";
import { type AgeClass, systems } from "../knowledge/index.ts";
import { type Evidence, type Subject, wantsLesion } from "../patterns/index.ts";
import { criteriaOf } from "./criteria.ts";
import { described, nearly } from "./near.ts";
import { everyOutbreak, type Likeness, likenessOf, type Published, recordedThings } from "./outbreaks.ts";
import { placeKey } from "./place-key.ts";
import { type ResultsInHand, resultsInHand } from "./results.ts";
import { answerOf, casesOf } from "./statements.ts";
import { testedNegative } from "./tested-negative.ts";

type Strength = Statement["strength"];

/** A statement that the record meets, with what meets it: nothing to show where it is a class, or that something is not there. */
export interface Met {
  readonly statement: Statement;
  readonly strength: Strength;
  readonly evidence: readonly Evidence[];
}

export interface Fit {
  readonly disease: Disease;
  /** For it: hallmarks, then what is typical, then what supports. */
  readonly favour: readonly Met[];
  /** What excludes it, then what speaks against it. */
  readonly against: readonly Met[];
  /** Whether its usual age is that of the pigs; undefined where neither, where no age is known or a statement counts it. */
  readonly age: "usual" | "unusual" | undefined;
  /** Hallmarks and typical findings of which nobody looked at the organs. */
  readonly unseen: readonly { readonly statement: Statement; readonly organs: readonly string[] }[];
  /** Hallmarks and typical findings that were looked for and are not there. */
  readonly absent: readonly Statement[];
  /** It is notifiable, and none of the alarms that look for it was raised. */
  readonly isUnalarmed: boolean;
  readonly results: ResultsInHand;
  /** Entries of the authority that a sample tested negative for it; none where a result is positive. */
  readonly testedNegative: readonly Evidence[];
  /** What published outbreaks of it had of what the record has. */
  readonly likeness: Likeness;
  /** Criteria of the literature for which the laboratory looked in vain. */
  readonly unmet: readonly Criterion[];
  /** The places of the record that speak for it, each with the strongest statement that it meets. */
  readonly places: ReadonlyMap<string, Strength>;
  /** Other forms of the disease that fit less well. */
  readonly otherForms: readonly Fit[];
}

const strengths = ["hallmark", "typical", "supports", "excludes", "against"] as const;

/**
 * An exclusion from memory lowers, and never removes. What is typical of an organ and was told as a sign only, supports.
 */
function strengthOf({ strength, source, when }: Statement, evidence: readonly Evidence[]): Strength {
  if (strength === "excludes" && source.confidence !== "verified") return "against";
  const isToldOnly = when !== undefined && wantsLesion(when) && !evidence.some(isOfOrgan);
  return isCore(strength) && isToldOnly ? "supports" : strength;
}

const isOfOrgan = ({ path: [top] }: Evidence): boolean => systemIds.has(String(top));

export function fitOf(disease: Disease, subject: Subject, published: Published = everyOutbreak): Fit {
  const answers = disease.statements.flatMap((statement) =>
    statement.when === undefined ? [] : [{ statement, answer: answerOf(described(statement.when), subject) }],
  );
  const nearby = answers.flatMap(({ statement, answer }): Met[] => {
    if (answer.is === "met" || statement.when === undefined || !isCore(statement.strength)) return [];
    const looser = answerOf(nearly(statement.when), subject);
    return looser.is === "met" ? [{ statement, strength: "supports", evidence: looser.evidence }] : [];
  });
  const fully = answers.flatMap(({ statement, answer }): Met[] =>
    answer.is === "met"
      ? [{ statement, strength: strengthOf(statement, answer.evidence), evidence: answer.evidence }]
      : [],
  );
  const met = [...fully, ...news(nearby, fully)].sort(
    (a, b) => strengths.indexOf(a.strength) - strengths.indexOf(b.strength),
  );
  const favour = met.filter(({ strength }) => isFavour(strength));
  const core = answers.filter(({ statement: { strength } }) => isCore(strength));
  const results = resultsInHand(disease, subject);
  return {
    disease,
    favour,
    against: met.filter(({ strength }) => !isFavour(strength)),
    age: met.some(({ statement }) => isOfAge(statement))
      ? undefined
      : ageOf(
          disease,
          casesOf(subject).flatMap(({ ageClass }) => ageClass ?? []),
        ),
    unseen: core.flatMap(({ statement, answer }) =>
      answer.is === "not-looked-at" ? [{ statement, organs: answer.organs }] : [],
    ),
    absent: core.flatMap(({ statement, answer }) => (answer.is === "not-met" ? [statement] : [])),
    isUnalarmed: isUnalarmed(disease, subject),
    results,
    testedNegative: results.positive.length > 0 ? [] : testedNegative(disease, subject),
    likeness: likenessOf(disease.id, recordedThings(subject), published),
    unmet: unmetCriteria(disease, subject),
    places: new Map(
      favour
        .toReversed()
        .flatMap(({ strength, evidence }) => evidence.map((one) => [placeKey(one), strength])),
    ),
    otherForms: [],
  };
}

/** What is only nearly so says nothing new of places on which what is typical rests, or another statement that is only nearly so. */
function news(nearby: readonly Met[], fully: readonly Met[]): readonly Met[] {
  const known = new Set(
    fully.filter(({ strength }) => isCore(strength)).flatMap(({ evidence }) => evidence.map(placeKey)),
  );
  return nearby.filter(({ evidence }) => {
    const places = evidence.map(placeKey).filter((place) => !known.has(place));
    for (const place of places) known.add(place);
    return places.length > 0;
  });
}

const isFavour = (strength: Strength): boolean => strength === "supports" || isCore(strength);

export const isCore = (strength: Strength): boolean => strength === "hallmark" || strength === "typical";

/** Whether a statement asks for the age alone, which counts once. */
const isOfAge = ({ when }: Statement): boolean =>
  when?.class !== undefined || when?.younger_than !== undefined;

function ageOf({ ages }: Disease, classes: readonly AgeClass[]): Fit["age"] {
  if (classes.some((one) => ages.usual.includes(one))) return "usual";
  return classes.length === 0 || classes.some((one) => ages.seldom?.includes(one)) ? undefined : "unusual";
}

export const isExcluded = ({ against }: Fit): boolean =>
  against.some(({ strength }) => strength === "excludes");

/** Whether the core of its picture is there: without that, nobody would think of it. */
export const hasCore = ({ favour }: Fit): boolean => favour.some(({ strength }) => isCore(strength));

const unmetCriteria = (disease: Disease, subject: Subject): readonly Criterion[] =>
  (criteriaOf(disease, subject)?.checked ?? []).flatMap(({ criterion, answer, results }) =>
    answer.is === "not-met" && results.length > 0 ? [criterion] : [],
  );

/** Alarms that the authority lifted were raised all the same. */
const isUnalarmed = ({ notifiable, alarms }: Disease, subject: Subject): boolean =>
  notifiable === "listed" &&
  alarms.length > 0 &&
  !findAlarms(subject).some(({ pattern }) => alarms.includes(pattern.id));

/** On how many organs something was found that speaks for it, by statements of any strength or of some. */
export const organsSeen = ({ favour }: Fit, counts = (_: Strength): boolean => true): number =>
  new Set(
    favour.flatMap(({ strength, evidence }) =>
      (counts(strength) ? evidence : []).flatMap(({ path: [system, organ] }) =>
        systemIds.has(String(system)) ? [`${system}.${organ}`] : [],
      ),
    ),
  ).size;

/** Whether something that was found on an organ speaks for it, and not age and signs alone. */
export const hasLesion = ({ favour }: Fit): boolean =>
  favour.some(({ evidence }) => evidence.some(isOfOrgan));

const systemIds: ReadonlySet<string> = new Set(systems.map(({ id }) => id));

/** In how many pigs something was found that speaks for it. */
export const casesSeen = ({ favour }: Fit): number =>
  new Set(favour.flatMap(({ evidence }) => evidence.map(({ subject }) => subject))).size;
