/** What each test of a sample is still worth, from time, temperature, storage and container. */
import { type Case, isUnborn, quantity } from "../cases/index.ts";
import { type AutolysisKind, autolysis } from "../knowledge/index.ts";
import { findingsOf, hoursAfterDeath, isFromOutside, type Sample, spell } from "../record/index.ts";
import { unfitContainers } from "./container.ts";
import { bandOf, limitHours } from "./limits.ts";

export type Test = NonNullable<Sample["for"]>[number];
/** good, reduced, doubtful; unknown when a time or the temperature is not recorded or the test has no limit. */
export type Worth = "good" | "reduced" | "doubtful" | "unknown";

export interface TimeWorth {
  readonly test: Test;
  /** The kind of test whose limit holds, such as `gut-histology`; undefined when there is none. */
  readonly kind: string | undefined;
  readonly worth: Worth;
  /** Hours from death to the sample. */
  readonly hours: number | undefined;
  /** Hours within which the test keeps its worth. */
  readonly limit: number | undefined;
  /** Id of the temperature band. */
  readonly band: string | undefined;
}

export interface TestWorth extends TimeWorth {
  /** Why it is not good, one sentence each. */
  readonly reasons: readonly string[];
}

/**
 * What each test asked of a sample is still worth: the worse of time and container, with the reasons.
 * It is advice: no sample is thrown away for it.
 */
export function sampleWorth(one: Case, sample: Sample): TestWorth[] {
  return (sample.for ?? []).map((test) => {
    const time = timeWorth(one, sample, test);
    const unfit = unfitContainers(one, { ...sample, for: [test] });
    const frozen = isFrozenHistology(one, test);
    return {
      ...time,
      worth: worst([
        time.worth,
        ...unfit.map((use) => use.worth),
        ...(frozen ? (["doubtful"] as const) : []),
      ]),
      reasons: [
        ...timeReasons(time),
        ...(frozen ? ["the carcass was frozen, and ice crystals tear the cells"] : []),
        ...unfit.map(({ into, why }) => `${into}: ${why}`),
      ],
    };
  });
}

/** What time and temperature leave of one test of a sample. */
export function timeWorth(one: Case, sample: Sample, test: Test): TimeWorth {
  const kind = kindOf(one, sample.from, test);
  const band = bandOf(one);
  const hours = hoursAfterDeath(one, sample);
  const known = { test, kind: kind?.id, hours, band: band?.id };
  // In a frozen carcass the clock stands still; what freezing does to it is another matter. Feed has no such clock.
  if (
    kind === undefined ||
    band === undefined ||
    hours === undefined ||
    one.record.opened?.state === "frozen"
  )
    return { ...known, worth: "unknown", limit: undefined };
  const set = limitHours(one, band, kind.id);
  if (set === undefined) return { ...known, worth: "unknown", limit: set };
  // No setting brings back what is lost after a time that was read in a source.
  const after = quantity("duration", kind.after) ?? Number.POSITIVE_INFINITY;
  const limit = Math.min(set, after);
  const last = Math.min(limit * kind.times, after);
  return {
    ...known,
    limit,
    worth: isOver(hours, last) ? "doubtful" : isOver(hours, limit) ? "reduced" : "good",
  };
}

/** Whether histology is asked of a carcass that was frozen. */
export const isFrozenHistology = (one: Case, test: Test): boolean =>
  one.record.opened?.state === "frozen" && (test === "histology" || test === "immunohistochemistry");

function kindOf(one: Case, from: string, test: Test): (AutolysisKind & { readonly id: string }) | undefined {
  if (isFromOutside(from)) return undefined;
  // Nobody reads villi of a fetus, and its gut holds no germs that digest it.
  const isRead = autolysis.gut.includes(from) && !isUnborn(one.ageClass) && !isDeepInGut(one, from);
  const tissue = isRead ? "gut" : "other";
  const found = Object.entries(autolysis.kinds).find(
    ([, kind]) => kind.tests.includes(test) && (kind.tissue === "any" || kind.tissue === tissue),
  );
  return found === undefined ? undefined : { id: found[0], ...found[1] };
}

/** Whether the lesion of this piece of gut lies deeper than the villi, which are the first to go. */
export const isDeepInGut = (one: Case, from: string): boolean =>
  findingsOf(one).some(
    ({ organ, finding: { process, exudate } }) =>
      organ.id === from &&
      (autolysis.deep_in_gut.processes.includes(process) ||
        (exudate !== undefined && autolysis.deep_in_gut.exudates.includes(exudate))),
  );

function timeReasons({ worth, hours, limit, band, kind }: TimeWorth): string[] {
  if (hours === undefined || limit === undefined || band === undefined || kind === undefined) return [];
  if (worth !== "reduced" && worth !== "doubtful") return [];
  return [
    `${spell(hours)} after death ${autolysis.bands[band]?.title}, limit ${spell(limit)}; ${autolysis.kinds[kind]?.still}`,
  ];
}

/** Later than a limit by a minute or more. */
const isOver = (hours: number, limit: number): boolean => Math.round(hours * 60) > Math.round(limit * 60);

const order: readonly Worth[] = ["unknown", "good", "reduced", "doubtful"];
const worst = (all: readonly Worth[]): Worth =>
  all.reduce((a, b) => (order.indexOf(b) > order.indexOf(a) ? b : a));
