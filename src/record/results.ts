/** What laboratories answered about the samples of a visit: results by sample and pig, and what is still open. */
import {
  type Case,
  type Moment,
  moment,
  type Path,
  type Results,
  type Visit,
  type VisitContext,
} from "../cases/index.ts";
import { isAgentOf } from "../knowledge/agents.ts";
import { fact } from "./fact.ts";
import type { Sample } from "./materials.ts";
import { parcelsOf } from "./parcels.ts";
import { samplesOf } from "./samples.ts";
import { openedAt, sampleAt } from "./times.ts";

export type ResultEntry = Results["record"]["entries"][number];

export interface PlacedResult {
  readonly file: Results;
  readonly entry: ResultEntry;
  readonly index: number;
  /** Where it stands in its file. */
  readonly path: Path;
  /** The samples that it is about, as written. */
  readonly samples: readonly string[];
  /** Whether it was written as the result of a pool. */
  readonly isPool: boolean;
  /** Day of the result: its own, or that of the report. */
  readonly date: string | undefined;
}

/** All results of a visit, file by file. */
export const resultsOf = fact((visit: VisitContext): readonly PlacedResult[] =>
  visit.results.flatMap(placed),
);

export const placed = fact((file: Results): readonly PlacedResult[] =>
  file.record.entries.map((entry, index) => ({
    file,
    entry,
    index,
    path: ["entries", index],
    samples: entry.pool ?? (entry.sample === undefined ? [] : [entry.sample]),
    isPool: entry.pool !== undefined,
    date: entry.date ?? file.record.laboratory?.reported,
  })),
);

/** A sample with the pig that it was taken of. */
export interface TakenSample {
  readonly one: Case;
  readonly sample: Sample;
  readonly index: number;
}

/** The samples of a visit by their number. */
export const takenSamples = fact(
  (visit: Visit): ReadonlyMap<string, TakenSample> =>
    new Map(
      visit.cases
        .flatMap((one) =>
          samplesOf(one).map(({ sample, index }) => [sample.id, { one, sample, index }] as const),
        )
        .reverse(),
    ),
);

/** The ids of the pigs whose material a result is about: of each sample its own, and those that share its container. */
export function pigsOf(
  { samples }: PlacedResult,
  taken: ReadonlyMap<string, TakenSample>,
): readonly string[] {
  const pigs = samples.flatMap((id) => {
    const of = taken.get(id);
    return of === undefined ? [] : [of.one.id, ...(of.sample.pooled_with ?? [])];
  });
  return [...new Set(pigs)];
}

/** Results of the samples of one pig; of a pool, the pig is one of several. */
export const resultsOfCase = fact((one: Case): readonly PlacedResult[] => {
  if (one.visit === undefined || one.visit.results.length === 0) return [];
  const own = new Set(samplesOf(one).map(({ sample }) => sample.id));
  return resultsOf(one.visit).filter(({ samples }) => samples.some((id) => own.has(id)));
});

/** Whether a result says something of an agent: positive or negative, and of this agent or a narrower one. */
export const speaksOf = ({ entry }: PlacedResult, agent: string): boolean =>
  entry.agent !== undefined && isAgentOf(entry.agent, agent);

/** One test that was asked of one sample. */
export interface AskedTest extends TakenSample {
  readonly test: NonNullable<Sample["for"]>[number];
  /** Its results, in the order of their files; empty while it is open. */
  readonly arrived: readonly PlacedResult[];
}

/** The results of a visit by sample and test. */
const answersOf = fact((visit: VisitContext): ReadonlyMap<string, readonly PlacedResult[]> => {
  const answers = new Map<string, PlacedResult[]>();
  for (const result of resultsOf(visit))
    for (const id of result.samples) {
      const key = `${id} ${result.entry.test}`;
      answers.set(key, [...(answers.get(key) ?? []), result]);
    }
  return answers;
});

/** What was asked of the samples of one pig. What is only kept was not asked. */
export const askedOf = fact((one: Case): readonly AskedTest[] => {
  const answers = one.visit === undefined ? undefined : answersOf(one.visit);
  return samplesOf(one).flatMap(({ sample, index }) =>
    (sample.for ?? [])
      .filter((test) => test !== "archive")
      .map((test) => ({ one, sample, index, test, arrived: answers?.get(`${sample.id} ${test}`) ?? [] })),
  );
});

/** The same with the wait. */
export interface Request extends AskedTest {
  /** When the wait began: the parcel was handed over, else the sample was taken. */
  readonly since: Moment | undefined;
}

/** What was asked of the samples of a visit. */
export const requestsOf = fact((visit: Visit): readonly Request[] => {
  const sent = new Map(
    parcelsOf(visit).flatMap(({ parcel, samples }) =>
      samples.map(({ id }) => [id, moment(parcel.sent)] as const),
    ),
  );
  return visit.cases.flatMap((one) =>
    askedOf(one).map((asked) => ({
      ...asked,
      since:
        sent.get(asked.sample.id) ??
        sampleAt(one, asked.sample) ??
        openedAt(one) ??
        moment(visit.record.date),
    })),
  );
});

export const isOpen = ({ arrived }: AskedTest): boolean => arrived.length === 0;

/** Whole days from one moment to another, by the clock that was written down; never below zero. */
const daysBetween = (from: Moment, to: Moment): number =>
  Math.max(0, Math.floor(to.written / 24) - Math.floor(from.written / 24));

/** Days that a request has waited on a day. */
export const daysOpen = ({ since }: Request, today: Moment): number | undefined =>
  since === undefined ? undefined : daysBetween(since, today);
