/** The results of `carcase herd --shard` as the result of one run. */
import { dirname } from "node:path";
import type { Archive, Case } from "../cases/index.ts";
import { herdJson } from "../formats/herd/json.ts";
import { checkIndicators, comparePlaces, type HerdReport, notRecorded, type Stratum } from "../herd/index.ts";
import type { SnoutReading } from "../reading/index.ts";
import { checkScales } from "../score/index.ts";
import { grouped } from "../words/grouped.ts";
import type { CommonOptions } from "./options.ts";
import type { Run } from "./run.ts";
import type { Part, Parts, ShardMark } from "./shard.ts";
import { UsageError } from "./usage-error.ts";

interface HerdFacts {
  /** Farms of the pigs that are counted: by their files, with their ids. */
  readonly farms: readonly (readonly [file: string | null, id: string | null])[];
  readonly visits: readonly VisitPlace[];
  readonly cases: readonly (readonly [id: string, file: string])[];
  /** Indicators and scales that were asked for and that no pig of this part knows. */
  readonly unknown: readonly string[];
}

/** Where a visit stands among the others. */
interface VisitPlace {
  readonly farm: string | null;
  readonly visit: string | null;
  /** Of cases without a visit. */
  readonly folder: string | null;
  readonly date: string | null;
  /** Its file, and that of its first case. */
  readonly file: string;
  readonly first: string;
}

type ShardOptions = CommonOptions & { readonly shard?: string };

interface HerdAsked {
  readonly paths: readonly string[];
  readonly options: Omit<ShardOptions, "shard" | "output" | "color" | "quiet">;
  readonly indicators: readonly string[];
  readonly scales: readonly string[];
}

interface Named {
  readonly by?: readonly string[];
  readonly indicators?: readonly string[];
  readonly scales?: readonly string[];
}

/** @throws UsageError for what cannot be put together from parts */
export function checkHerdParts({ by, indicators, scales }: Named): void {
  if (indicators === undefined || scales === undefined)
    throw new UsageError(
      "--shard: which indicators and scales are told first is decided over all farms; name them with --indicator and --scale",
    );
  if (by?.includes("visit") === false)
    throw new UsageError("--shard: pigs of several visits do not add up from parts; add visit to --by");
}

/** What was asked for, as far as a pig of this part knows it. */
export function knownOf<Asked extends Named>(cases: readonly Case[], asked: Asked): Asked {
  const isKnown = (check: (cases: readonly Case[], ids: string[]) => void) => (id: string) => {
    try {
      check(cases, [id]);
      return true;
    } catch (error) {
      if (error instanceof RangeError) return false;
      throw error;
    }
  };
  const { indicators = [], scales = [] } = asked;
  return {
    ...asked,
    indicators: indicators.filter(isKnown(checkIndicators)),
    scales: scales.filter(isKnown(checkScales)),
  };
}

export function herdMark(
  { cases, visits }: Archive,
  asked: Named,
  known: Named,
  { paths, options }: Run<ShardOptions>,
): ShardMark<HerdAsked, HerdFacts> {
  const { shard = "", output: _o, color: _c, quiet: _q, ...rest } = options;
  const [number = 1, of = 1] = shard.split("/").map(Number);
  const { indicators = [], scales = [] } = asked;
  const question: HerdAsked = { paths: paths.toSorted(), options: rest, indicators, scales };
  const inVisit = grouped(cases, (one) => one.visit?.file ?? "");
  const ofVisits = visits.map((visit): VisitPlace => {
    const [first] = inVisit.get(visit.file) ?? [];
    return {
      farm: visit.farm?.id ?? null,
      visit: visit.id,
      folder: null,
      date: visit.record.date ?? null,
      file: visit.file,
      first: first?.file ?? visit.file,
    };
  });
  const alone = cases.filter(({ visit }) => visit === undefined);
  const ofFolders = [...grouped(alone, folderOf)].map(([folder, [one]]): VisitPlace => {
    return { farm: one.farm?.id ?? null, visit: null, folder, date: null, file: one.file, first: one.file };
  });
  const read = new Set([...(known.indicators ?? []), ...(known.scales ?? [])]);
  return {
    command: "herd",
    number,
    of,
    asked: question,
    facts: {
      farms: [...new Map(cases.map(({ farm }) => [farm?.file ?? null, farm?.id ?? null]))],
      visits: [...ofVisits, ...ofFolders],
      cases: cases.flatMap((one) => (one.record.case === undefined ? [] : [[one.id, one.file] as const])),
      unknown: [...indicators, ...scales].filter((id) => !read.has(id)),
    },
  };
}

type HerdPart = Part<HerdReport & { readonly snout_reading?: readonly SnoutReading[] }, HerdAsked, HerdFacts>;

/** @throws UsageError for what does not add up */
export function mergedHerd(parts: Parts<HerdPart>): string {
  const { indicators, scales } = parts[0].mark.asked;
  const places = placesOf(parts);
  checkParts(parts, [...indicators, ...scales]);
  const farms = new Set(parts.flatMap(({ mark }) => mark.facts.farms.map(([file]) => file)));
  /** Where farms are several, each stratum names its own. */
  const inOrder = <Row extends { readonly stratum: Stratum }>(
    rowsOf: (report: HerdReport) => readonly Row[] | undefined,
  ): Row[] =>
    parts
      .flatMap(({ result, mark }) => {
        const [[, farm] = [null, null], ...others] = mark.facts.farms;
        const isNamed = farms.size < 2 || others.length > 0;
        return (rowsOf(result) ?? []).map((row) => ({
          row: isNamed ? row : { ...row, stratum: { farm, ...row.stratum } },
          place: places.get(keyOf({ farm, ...row.stratum })),
        }));
      })
      .sort((a, b) => comparePlaces(orderOf(a.place), orderOf(b.place)) || byFirst(a.place, b.place))
      .map(({ row }) => row);
  const combined = parts.some(({ result }) => result.combined !== undefined);
  const snouts = parts
    .flatMap(({ result }) => result.snout_reading ?? [])
    .sort((a, b) => compare(places.get(keyOf(a))?.file, places.get(keyOf(b))?.file));
  return herdJson(
    {
      answers: inOrder((report) => report.answers),
      told_first: { indicators, scales },
      estimates: inOrder((report) => report.estimates),
      scores: inOrder((report) => report.scores),
      ...(combined && { combined: inOrder((report) => report.combined) }),
    },
    snouts,
  );
}

const folderOf = ({ file }: Case): string => dirname(file);
const keyOf = ({
  farm = null,
  visit = null,
  folder = null,
}: {
  readonly farm?: string | null;
  readonly visit?: string | null;
  readonly folder?: string | null;
}): string => JSON.stringify([farm, visit, folder]);
const orderOf = (place: VisitPlace | undefined): readonly string[] => [place?.date ?? notRecorded];
const compare = (a = "", b = ""): number => (a < b ? -1 : a > b ? 1 : 0);
const byFirst = (a: VisitPlace | undefined, b: VisitPlace | undefined): number => compare(a?.first, b?.first);

function placesOf(parts: readonly HerdPart[]): ReadonlyMap<string, VisitPlace> {
  const places = new Map<string, VisitPlace>();
  for (const place of parts.flatMap(({ mark }) => mark.facts.visits)) {
    const other = places.get(keyOf(place));
    if (other !== undefined)
      throw new UsageError(
        `${other.file} and ${place.file} go by one name of farm and visit, so that their pigs cannot be told apart; run carcase herd without --shard, or give one a name of its own`,
      );
    places.set(keyOf(place), place);
  }
  return places;
}

function checkParts(parts: readonly HerdPart[], asked: readonly string[]): void {
  const files = new Map<string, string>();
  for (const [id, file] of parts.flatMap(({ mark }) => mark.facts.cases)) {
    const other = files.get(id);
    if (other !== undefined)
      throw new UsageError(
        `case: "${id}" is the case of ${other} and of ${file}, in two parts, and no pig is counted twice. Take out the copy, or give one of the two pigs an id of its own.`,
      );
    files.set(id, file);
  }
  const full = parts.filter(({ mark }) => mark.facts.cases.length > 0);
  const unknown = asked.find(
    (id) => full.length > 0 && full.every(({ mark }) => mark.facts.unknown.includes(id)),
  );
  if (unknown !== undefined)
    throw new UsageError(`no pig knows an indicator or scale "${unknown}"; carcase explain lists them`);
}
