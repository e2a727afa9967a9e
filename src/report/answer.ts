/** The first screen: what was asked, what was found, what changed, what it is and what comes next, a sentence each. */
import type { Compared } from "../compare/index.ts";
import type { Estimate } from "../herd/index.ts";
import type { Listing, ReportPig, ReportScale, ReportVisit, Said } from "./result.ts";

interface Known {
  readonly visit: ReportVisit | undefined;
  readonly pigs: readonly ReportPig[];
  /** Of the visit, over all its groups, of what is told first. */
  readonly estimates: readonly Estimate[];
  readonly scales: readonly ReportScale[];
  /** With the visit before; undefined where there is none. */
  readonly compared: Compared | undefined;
}

/** The shares that may be told before the rest is. */
const mostShares = 2;

export function answerOf({ visit, pigs, estimates, scales, compared }: Known): Said[] {
  const shares = bestFirst(estimates).slice(0, mostShares).map(shareSaid);
  return [
    ...askedSaid(visit),
    ...(shares.length > 0 ? shares : scales.slice(0, mostShares).flatMap((scale) => middleSaid(scale, pigs))),
    ...(compared === undefined ? [] : [changeSaid(compared)]),
    ...diagnosisSaid(pigs),
    nextSaid(visit),
  ].slice(0, 6);
}

function askedSaid(visit: ReportVisit | undefined): Said[] {
  if (visit?.question != null) return [{ say: "asked", values: { question: visit.question } }];
  return visit?.complaint == null ? [] : [{ say: "complained", values: { complaint: visit.complaint } }];
}

/** One of an indicator: of pigs that stand for a group before pigs that were chosen. */
function bestFirst(estimates: readonly Estimate[]): Estimate[] {
  const best = new Map<string, Estimate>();
  for (const one of estimates) {
    const before = best.get(one.indicator);
    if (before === undefined || rank(one) > rank(before)) best.set(one.indicator, one);
  }
  return [...best.values()].filter(({ examined }) => examined > 0);
}

const rank = ({ reach, examined }: Estimate): number => (reach === "prevalence" ? 1e6 : 0) + examined;

const memory = (isSo: boolean): { from_memory?: true } => (isSo ? { from_memory: true } : {});

function shareSaid({
  indicator,
  title: own,
  affected,
  examined,
  reach,
  lower,
  upper,
  groups,
  stratum,
  confidence,
  scale,
}: Estimate): Said {
  const isFromMemory = confidence === "from-memory" || scale?.confidence === "from-memory";
  const title = { term: "indicators", id: indicator, title: own, ...memory(isFromMemory) } as const;
  if (reach !== "prevalence" || lower === null || upper === null)
    return { say: "share_of_these", values: { title, affected, examined } };
  const names = groups?.flatMap(({ group }) => group ?? []) ?? (stratum.group == null ? [] : [stratum.group]);
  const heads = groups?.reduce((sum, { head }) => sum + head, 0) ?? 0;
  const list: Listing = { list: names };
  return {
    say: "share_prevalence",
    values: { title, affected, examined, groups: list, low: lower, high: upper, heads },
  };
}

function middleSaid({ scale, title, most, from_memory }: ReportScale, pigs: readonly ReportPig[]): Said[] {
  const values = pigs
    .flatMap(({ scores }) => scores.find((one) => one.scale === scale)?.value ?? [])
    .sort((a, b) => a - b);
  if (values.length === 0) return [];
  const median = medianOf(values);
  return [
    {
      say: "scale_middle",
      values: {
        title: { term: "scales", id: scale, title, ...memory(from_memory) },
        median,
        most,
        n: values.length,
      },
    },
  ];
}

/** @param values in their order, at least one */
export function medianOf(values: readonly number[]): number {
  const middle = values.length / 2;
  const at = (index: number): number => values[index] ?? 0;
  return values.length % 2 === 0 ? (at(middle - 1) + at(middle)) / 2 : at(Math.floor(middle));
}

/** What was shown to have changed; where nothing was, the first that could be compared. */
function changeSaid({ comparable, comparisons, sides }: Compared): Said {
  const day = sides[0]?.date ?? "";
  const tested = comparisons.filter((one) => one.comparable);
  const one = tested.find(({ shown }) => shown) ?? tested[0];
  const [before, after] = [one?.sides[0], one?.sides.at(-1)];
  if (!comparable || one === undefined || before === undefined || after === undefined)
    return { say: "change_refused", values: { day } };
  const told = (side: typeof before): Said =>
    side.affected === undefined
      ? { say: "middle_of", values: { median: side.median ?? 0, n: side.examined } }
      : { say: "count_of", values: { affected: side.affected, examined: side.examined } };
  const title = {
    term: one.kind === "indicator" ? "indicators" : "scales",
    id: one.question,
    title: one.title,
    ...memory(one.confidence === "from-memory"),
  } as const;
  const level = (side: typeof before): number => side.proportion ?? side.mean ?? side.median ?? 0;
  const say = !one.shown ? "change_unshown" : level(after) < level(before) ? "change_better" : "change_worse";
  return { say, values: { day, title, before: told(before), after: told(after) } };
}

/** A cause that somebody wrote down; else what is still waited for. */
function diagnosisSaid(pigs: readonly ReportPig[]): Said[] {
  const causes = new Set(pigs.flatMap(({ diagnosis }) => diagnosis.causes));
  if (causes.size > 0) return [{ say: "diagnosis_sure", values: { diagnosis: [...causes].join("; ") } }];
  const waits = pigs.some(
    ({ diagnosis }) => diagnosis.aetiologic.length > 0 || diagnosis.basis === "pending",
  );
  const waiting = pigs.flatMap(({ samples }) => samples).filter(({ open }) => open.length > 0).length;
  return [waits ? { say: "diagnosis_open", values: { waiting } } : { say: "diagnosis_none" }];
}

function nextSaid(visit: ReportVisit | undefined): Said {
  const first = visit?.recommendations[0];
  return first === undefined ? { say: "next_none" } : { say: "next_first", values: { what: first.what } };
}
