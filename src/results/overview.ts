/** What the samples of visits were asked, what came back, and how long the rest has been waited for. */
import type { Moment, Visit } from "../cases/index.ts";
import { agentName } from "../knowledge/agents.ts";
import {
  daysOpen,
  isOpen,
  type PlacedResult,
  pigsOf,
  type Request,
  requestsOf,
  resultsOf,
  takenSamples,
} from "../record/index.ts";

/** A test that has no result yet. */
export interface Waiting {
  readonly sample: string;
  readonly case: string;
  readonly from: string;
  readonly test: string;
  /** Day from which it is counted: the parcel was handed over, else the sample was taken. */
  readonly since: string | null;
  readonly days: number | null;
}

/** A result that came. */
export interface Arrived {
  readonly samples: readonly string[];
  readonly pool: boolean;
  /** The pigs that it is about; empty where no case of the visit has the sample. */
  readonly cases: readonly string[];
  readonly test: string;
  readonly agent: string | null;
  readonly analyte: string | null;
  readonly interpretation: string | null;
  readonly value: number | string | null;
  readonly unit: string | null;
  readonly ct: number | null;
  readonly cut_off: number | null;
  readonly titre: number | string | null;
  readonly text: string | null;
  readonly date: string | null;
  readonly laboratory: string | null;
  readonly reference: string | null;
  /** Days from sending to the result. */
  readonly days: number | null;
  readonly file: string;
  readonly line: number;
}

export interface VisitResults {
  readonly visit: string;
  readonly file: string;
  /** Tests that were asked of samples. */
  readonly asked: number;
  readonly answered: number;
  /** The longest wait first. */
  readonly open: readonly Waiting[];
  readonly arrived: readonly Arrived[];
  /** Results of which no case of the visit has the sample. */
  readonly strays: number;
}

/** Visits of which nothing was asked and nothing came are left out. */
export const resultsOverview = (visits: readonly Visit[], today: Moment): VisitResults[] =>
  visits
    .map((visit) => overviewOf(visit, today))
    .filter(({ asked, arrived }) => asked > 0 || arrived.length > 0);

function overviewOf(visit: Visit, today: Moment): VisitResults {
  const requests = requestsOf(visit);
  const open = requests.filter(isOpen);
  const arrived = resultsOf(visit).map((result) => arrivedOf(result, visit, requests));
  return {
    visit: visit.id,
    file: visit.file,
    asked: requests.length,
    answered: requests.length - open.length,
    open: open.map((request) => waitingOf(request, today)).sort((a, b) => (b.days ?? -1) - (a.days ?? -1)),
    arrived,
    strays: arrived.filter(({ cases }) => cases.length === 0).length,
  };
}

const waitingOf = (request: Request, today: Moment): Waiting => ({
  sample: request.sample.id,
  case: request.one.id,
  from: request.sample.from,
  test: request.test,
  since: dayOf(request.since),
  days: daysOpen(request, today) ?? null,
});

const dayOf = (at: Moment | undefined): string | null =>
  at === undefined ? null : new Date(at.written * 3_600_000).toISOString().slice(0, 10);

function arrivedOf(result: PlacedResult, visit: Visit, requests: readonly Request[]): Arrived {
  const { file, entry, samples, isPool, date, path } = result;
  const { laboratory } = file.record;
  const reference = entry.reference ?? laboratory?.reference;
  const asked = requests.find(({ arrived }) => arrived.includes(result));
  const came = date === undefined ? Number.NaN : Date.parse(date) / 3_600_000;
  const days =
    asked?.since === undefined ? Number.NaN : Math.floor(came / 24) - Math.floor(asked.since.written / 24);
  return {
    samples,
    pool: isPool,
    cases: pigsOf(result, takenSamples(visit)),
    test: entry.test,
    agent: entry.agent ?? null,
    analyte: entry.analyte ?? null,
    interpretation: entry.interpretation ?? null,
    value: entry.value ?? null,
    unit: entry.unit ?? null,
    ct: entry.ct ?? null,
    cut_off: entry.cut_off ?? null,
    titre: entry.titre ?? null,
    text: entry.text ?? null,
    date: date ?? null,
    laboratory: laboratory?.name ?? null,
    reference: reference === undefined ? null : String(reference),
    days: Number.isNaN(days) ? null : days,
    file: file.file,
    line: file.document.where(path).line,
  };
}

/** What was looked for, as people say it; empty where nothing is named, as of histology. */
export const soughtIn = ({ agent, analyte }: Arrived): string =>
  agent === null ? (analyte ?? "") : agentName(agent);
