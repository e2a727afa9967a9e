/** After the knife: what was due and taken, and for what each container is still good, with the time that it has left. */
import { type Case, type Moment, moment, quantity, type Visit } from "../cases/index.ts";
import { sampleCare, transportLimits } from "../knowledge/index.ts";
import {
  type Container,
  containersOf,
  findingsOf,
  hoursBetween,
  isAmong,
  namedOrgans,
  parcelsOf,
  type Sample,
  samplesOf,
} from "../record/index.ts";
import { sampleWorth, type TestWorth, timeWorth, unfitContainers } from "../sampling/index.ts";
import { type SampleDue, samplesOfCase } from "./due.ts";
import { plannedCases, samplePlan } from "./plan.ts";

type Test = SampleDue["for"][number];

export interface MissingSample {
  readonly one: Case;
  readonly due: SampleDue;
  /** The tests of it that no sample of the pig can carry. */
  readonly tests: readonly Test[];
  /** Hours in which it is still worth taking; zero or less when it is too late, undefined when nobody can tell. */
  readonly left: number | undefined;
}

export interface TestLeft {
  readonly test: Test;
  /** Hours left; zero or less when they are over, undefined when it has no end or when nobody can tell. */
  readonly left: number | undefined;
  readonly isTimed: boolean;
  /** What to do before the time is over. */
  readonly after: string | undefined;
  readonly worth: TestWorth;
}

export interface ContainerLeft {
  readonly container: Container;
  readonly tests: readonly TestLeft[];
}

/** Containers whose time is reckoned at one moment. */
export interface Reckoned {
  /** `parcel 1`; undefined for what is in none. */
  readonly parcel: string | undefined;
  /** As written: when it arrives, or now. */
  readonly at: string;
  readonly containers: readonly ContainerLeft[];
}

export interface SampleCheck {
  readonly visit: Visit;
  /** Samples due of the pigs that were sampled. */
  readonly due: number;
  readonly missing: readonly MissingSample[];
  /** Pigs of which something was due and nothing was taken. */
  readonly untouched: readonly Case[];
  /** Materials of the pen, taken once a visit, that are due and were not taken. */
  readonly once: readonly string[];
  readonly reckoned: readonly Reckoned[];
}

/** @param now as written: 2026-03-14T18:00 */
export function checkSamples(visit: Visit, now: string): SampleCheck {
  const all = visit.cases.map((one) => ({ one, due: dueIn(one, visit) })).filter(({ due }) => due.length > 0);
  const touched = all.filter(({ one }) => samplesOf(one).length > 0);
  return {
    visit,
    due: touched.reduce((sum, { due }) => sum + due.length, 0),
    missing: touched.flatMap(({ one, due }) => due.flatMap((sample) => missingOf(one, sample, now))),
    untouched: all.filter((pig) => !touched.includes(pig)).map(({ one }) => one),
    once: samplePlan(plannedCases(visit.cases), visit.settings)
      .once.map(({ from }) => from)
      .filter((from) => !containersOf(visit).some((container) => container.from === from)),
    reckoned: reckonedIn(visit, now),
  };
}

function reckonedIn(visit: Visit, now: string): Reckoned[] {
  const placed = new Map(parcelsOf(visit).flatMap((one) => one.samples.map(({ id }) => [id, one] as const)));
  const groups = new Map<string, Reckoned>();
  for (const container of containersOf(visit)) {
    const parcel = placed.get(container.id);
    const at = parcel?.parcel.arrives ?? now;
    const key = `${parcel?.name} ${at}`;
    const known = groups.get(key) ?? { parcel: parcel?.name, at, containers: [] };
    groups.set(key, { ...known, containers: [...known.containers, leftOf(container, moment(at))] });
  }
  return [...groups.values()];
}

/** What is due only with a lesion counts where one is written down. */
function dueIn(one: Case, visit: Visit): SampleDue[] {
  if (one.due.length === 0) return [];
  const ill = new Set(findingsOf(one).map(({ organ }) => organ.id));
  return samplesOfCase(one, visit.cases).filter(
    ({ from, where }) =>
      where.length === 0 || ill.has(from) || (alike[from] ?? []).some((organ) => ill.has(organ)),
  );
}

/** Pleura and pleural space are one place. */
const alike: Readonly<Record<string, readonly string[]>> = {
  "serosa.pleural_space": ["respiratory.pleura"],
};

function missingOf(one: Case, due: SampleDue, now: string): MissingSample[] {
  const tests = due.for.filter(
    (test) => !samplesOf(one).some(({ sample }) => carries(one, sample, due.from, test)),
  );
  const [test] = tests;
  if (test === undefined) return [];
  const { hours, limit } = timeWorth(
    one,
    { id: "due", from: due.from, into: due.into, for: [test], at: now },
    test,
  );
  return [{ one, due, tests, left: hours === undefined || limit === undefined ? undefined : limit - hours }];
}

function carries(one: Case, sample: Sample, from: string, test: Test): boolean {
  const isFrom =
    sample.from === "carcass" ||
    isAmong(from, [sample.from]) ||
    (alike[from] ?? []).includes(sample.from) ||
    namedOrgans(sample.site ?? "").some(({ id }) => id === from);
  return (
    isFrom &&
    sample.for?.includes(test) === true &&
    unfitContainers(one, { ...sample, for: [test] }).every(({ worth }) => worth !== "doubtful")
  );
}

function leftOf(container: Container, at: Moment | undefined): ContainerLeft {
  const { one, sample } = container;
  const since = hoursBetween(container.at, at);
  return {
    container,
    tests: sampleWorth(one, sample).map((worth) => {
      const row = keepsOf(container, worth.test);
      const hours = row === undefined ? undefined : hoursOf(row, one);
      return {
        test: worth.test,
        isTimed: row !== undefined,
        left: hours === undefined || since === undefined ? undefined : hours - since,
        after: row === undefined ? undefined : sampleCare.keeps[row]?.after,
        worth,
      };
    }),
  };
}

/** The first limit that fits, by its name. */
const keepsOf = ({ from, into }: Container, test: Test): string | undefined =>
  Object.entries(sampleCare.keeps).find(
    ([, row]) =>
      into !== undefined &&
      row.into.includes(into) &&
      row.tests.includes(test) &&
      (row.from === undefined || isAmong(from, row.from)),
  )?.[0];

function hoursOf(name: string, { settings }: Case): number | undefined {
  const row = sampleCare.keeps[name];
  const ships =
    row?.limit === undefined ? quantity("duration", row?.time) : transportLimits[row.limit]?.value;
  return settings.samples.keeps[name] ?? ships;
}
