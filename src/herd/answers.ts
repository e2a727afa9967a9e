/** The answer first: for each visit and question what was seen of how many, between which limits, and of whom. */
import type { Case, VisitQuestion } from "../cases/index.ts";
import { questionOf } from "../cases/index.ts";
import { grouped } from "../words/grouped.ts";
import { count, listing } from "../words/listing.ts";
import { levelPercent, percent, percentRange } from "../words/percent.ts";
import { type Estimate, type EstimateChoice, estimate } from "./estimate.ts";
import { indicatorsIn } from "./indicators-and-scales.ts";
import { reachOf } from "./selection-basis.ts";
import { standingOf } from "./standing.ts";
import { type Dimension, type Stratum, type StratumOfCases, strata } from "./strata.ts";

export interface HerdAnswer extends Pick<Estimate, "indicator" | "title" | "confidence" | "scale"> {
  /** The visit, or what was asked for instead; never the selection basis, all of which are told. */
  readonly stratum: Stratum;
  readonly pigs: number;
  /** What the visit asked before its pigs were opened, if it was this. */
  readonly asked: VisitQuestion | null;
  /** A sentence without the title that it is about. */
  readonly text: string;
  /** What must be known to read its limits, each a clause. */
  readonly notes: readonly string[];
}

interface AnswerOptions {
  /** What a sentence is about. */
  readonly by: readonly Dimension[];
  readonly indicators: readonly string[];
  readonly choiceOf: (cell: StratumOfCases, by: readonly Dimension[]) => EstimateChoice;
}

/** In the order of the strata; what a visit asked goes before the other indicators. */
export function herdAnswers(all: readonly Case[], { by, indicators, choiceOf }: AnswerOptions): HerdAnswer[] {
  const places = grouped(strata(all, by), ({ stratum }) => JSON.stringify(stratum));
  return [...places.values()].flatMap((cells) => {
    const cases = cells.flatMap((cell) => cell.cases);
    const asked = questionIn(cases);
    const ids = asked === null ? indicators : [asked.indicator, ...indicators];
    return [...new Set(ids)].flatMap((id) => {
      const parts = cells.flatMap((whole) =>
        indicatorsIn(whole, [id]).map(({ indicator, cell }): Part => {
          const made = (some: StratumOfCases, split: readonly Dimension[]) =>
            estimate(id, indicator, some, standingOf(some, all, split), choiceOf(some, split));
          const split: Dimension[] = [...by.filter((one) => one !== "group"), "group"];
          return {
            whole: made(cell, by),
            groups: by.includes("group") ? [] : strata(cell.cases, split).map((some) => made(some, split)),
          };
        }),
      );
      const [first] = parts;
      if (first === undefined) return [];
      const { title, confidence, scale, stratum } = first.whole;
      return [
        {
          stratum,
          pigs: cases.length,
          indicator: id,
          title,
          confidence,
          ...(scale !== undefined && { scale }),
          asked: asked?.indicator === id ? asked : null,
          text: sentence(parts, asked?.indicator === id ? asked : null),
          notes: [...new Set(parts.flatMap(notesOf))],
        },
      ];
    });
  });
}

/** Where a corrected share is told, its notes are in the sentence. */
const notesOf = ({ whole, groups }: Part): readonly string[] =>
  whole.true_prevalence !== undefined
    ? []
    : (whole.reach === "prevalence" ? [whole] : groups).flatMap(({ lower, notes = [] }) =>
        lower === null ? [] : notes,
      );

/** Pigs chosen in one way, all of them and group by group. */
interface Part {
  readonly whole: Estimate;
  readonly groups: readonly Estimate[];
}

/** The question of the visit that all these pigs are of. */
function questionIn(cases: readonly Case[]): VisitQuestion | null {
  const visits = new Set(cases.map(({ visit }) => visit));
  const [visit] = visits;
  return visits.size === 1 ? (questionOf(visit) ?? null) : null;
}

function sentence(parts: readonly Part[], asked: VisitQuestion | null): string {
  const read = parts.filter(({ whole }) => whole.examined > 0);
  const others = read.filter(isAlone);
  const standing = read.filter((part) => !others.includes(part));
  const chosen = listing(others.map(({ whole }) => `${seen(whole)} ${chosenHow(whole)}`));
  const alone = `of these pigs alone${standing.length > 0 ? "" : ", so nothing of how common it is"}`;
  const sum = (key: "examined" | "not_graded" | "not_examined") =>
    parts.reduce((total, { whole }) => total + whole[key], 0);
  const clauses = [
    ...standing.map(({ whole, groups }) => standingClause(whole, groups)),
    ...(chosen === "" ? [] : [`${alone}: ${chosen}`]),
    ...(sum("examined") === 0 ? ["read in no pig"] : []),
    ...(sum("not_graded") > 0 ? [`${count(sum("not_graded"), "pig")} examined but not graded`] : []),
    ...(sum("not_examined") > 0 ? [`${count(sum("not_examined"), "pig")} not examined`] : []),
    ...questionClause(asked),
  ];
  return `${clauses.join("; ")}.`;
}

/** One visit says how common it is; what is to be compared needs the pigs of another. */
const questionClause = (asked: VisitQuestion | null): string[] =>
  asked?.direction === undefined
    ? []
    : [
        `asked was whether ${asked.direction === "either" ? "it differs from" : `${asked.direction} have it than on`} the visit before, which carcase compare answers`,
      ];

const seen = ({ affected, examined }: Pick<Estimate, "affected" | "examined">): string =>
  `${affected} of ${examined}`;
const chosenHow = ({ basis, why }: Estimate): string =>
  `(${reachOf(basis).title}${why === null ? "" : `; ${why}`})`;

/** Whether pigs stand for no group, and neither do those of each group. */
function isAlone({ whole, groups }: Part): boolean {
  if (!reachOf(whole.basis).prevalence) return true;
  return whole.why !== null && !groups.some(({ reach }) => reach === "prevalence");
}

/** Pigs that may stand for a group. */
function standingClause(whole: Estimate, groups: readonly Estimate[]): string {
  const { level, lower, upper, method, examined, affected } = whole;
  if (examined === 1) {
    const told = `${affected === 1 ? "seen" : "not seen"} in the one pig read ${chosenHow(whole)}`;
    return whole.basis === "complete" ? told : `${told}, which says next to nothing of its group`;
  }
  if (whole.true_prevalence !== undefined) return whole.wording.slice(whole.title.length + 2, -1);
  const told = `${seen(whole)} ${chosenHow(whole)}`;
  if (whole.reach === "these-pigs") return eachGroup(whole, groups);
  const of = ofWhom(whole, groups);
  if (method === null) return `${told}: prevalence ${percent(whole.proportion ?? 0)} ${of}, known exactly`;
  const range = percentRange(lower ?? 0, upper ?? 1);
  if (method === "bounds") return `${told}: prevalence ${range} ${of}, whatever the others have`;
  if (whole.groups !== undefined && (affected === 0 || affected === examined)) {
    const most =
      affected === 0 ? `no more than ${percent(upper ?? 1)}` : `no less than ${percent(lower ?? 0)}`;
    return `${told}, so ${most} ${of} have it (${levelPercent(level)} interval)`;
  }
  if (whole.one_sided !== null) {
    const { limit, value } = whole.one_sided;
    const most = limit === "upper" ? "no more than" : "no less than";
    return `${told}, so ${most} ${percent(value)} ${of} have it (${levelPercent(level)}, one-sided)`;
  }
  const weighed = whole.groups === undefined ? "" : `, by head count ${percent(whole.proportion ?? 0)}`;
  return `${told}, so ${range} ${of} have it (${levelPercent(level)} interval${weighed})`;
}

/** Drawn pigs that cannot be added up: each group for itself. */
function eachGroup(whole: Estimate, groups: readonly Estimate[]): string {
  const each = groups
    .filter(({ examined }) => examined > 0)
    .map((one) => {
      const limits =
        one.lower === null || one.upper === null ? "" : ` (${percentRange(one.lower, one.upper)})`;
      return `${seen(one)} in ${one.stratum.group ?? "no group"}${limits}`;
    });
  const { level, basis, why } = whole;
  const limited = groups.some(({ lower }) => lower !== null) ? `, ${levelPercent(level)} intervals` : "";
  return `${listing(each)}, ${reachOf(basis).title}${limited}; not added up, because ${why ?? "they are of several groups"}`;
}

/** `of nursery-2`, `of the 442 pigs of nursery-2 and finisher-3`. */
function ofWhom(
  { groups: weighed, method, examined, not_examined, not_graded, stratum }: Estimate,
  parts: readonly Estimate[],
): string {
  if (weighed !== undefined) {
    const head = weighed.reduce((sum, { head: pigs }) => sum + pigs, 0);
    return `of the ${count(head, "pig")} of ${listing(weighed.map(({ group }) => group ?? "no group"))}`;
  }
  const names = [
    ...parts.flatMap(({ stratum: part }) => part.group ?? []),
    ...(stratum.group == null ? [] : [stratum.group]),
  ];
  const named = names.length > 0 ? listing([...new Set(names)]) : "the group";
  return method === null || method === "bounds"
    ? `of the ${count(examined + not_examined + not_graded, "pig")} of ${named}`
    : `of ${named}`;
}
