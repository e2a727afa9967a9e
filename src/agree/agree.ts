/** Do readers score alike? Every scale that at least two of them read on the same pigs. */
import { type PublishedAgreement, publishedAgreement, type Scale } from "../knowledge/index.ts";
import type { IntraclassCorrelations } from "../statistics/index.ts";
import { comparePair, correlations, fewPigs, type PairAgreement } from "./pair.ts";
import { type Reading, ReadingError } from "./reading.ts";

export interface ScaleAgreement {
  /** Id of the scale. */
  readonly scale: string;
  readonly title: string;
  readonly range: readonly [number, number];
  readonly confidence: Scale["source"]["confidence"];
  readonly source: string;
  /** Grades of the scale, ascending; null when it has too many values, or values between whole points, for kappa. */
  readonly grades: readonly number[] | null;
  /** Every two readers with a pig in common, in the order of their first readings. */
  readonly pairs: readonly PairAgreement[];
  /** With three readers or more: all of them, on the pigs that all have read; null below two such pigs. */
  readonly together: IntraclassCorrelations | null;
  /** As for a pair, of all readers together; null without them. */
  readonly together_caution: string | null;
  /** Published agreement on the same organ. */
  readonly published: readonly PublishedAgreement[];
}

export interface AgreeReport {
  readonly level: number;
  readonly scales: readonly ScaleAgreement[];
}

/** Up to so many steps above the lowest, the values of a scale are grades: a 0-10 scale has eleven. */
const mostSteps = 10;

/** More readers than these do not meet round one table. */
const mostReaders = 50;

/**
 * Compares readers, scale by scale, in the order in which the scales occur.
 * @param readings one a pig, reader and scale
 * @param scaleOf the scale of a name
 * @throws ReadingError when a reader reads a pig twice on a scale, a value is outside its scale, or no pig was read by two
 */
export function agree(
  readings: readonly Reading[],
  scaleOf: (id: string) => Scale | undefined,
  { level = 0.95 }: { readonly level?: number } = {},
): AgreeReport {
  const byScale = new Map<string, Map<string, Map<string, number>>>();
  for (const reading of readings) place(byScale, reading, scaleOf);
  const scales = [...byScale].flatMap(([id, byReader]) => {
    const scale = scaleOf(id);
    const found = scale === undefined ? null : scaleAgreement(scale, byReader, level);
    return found === null || found.pairs.length === 0 ? [] : [found];
  });
  if (scales.length === 0)
    throw new ReadingError(
      "no pig was read by two readers on the same scale; write readings: in the cases, or give a table with columns pig, reader and scales",
    );
  return { level, scales };
}

/** Puts a reading in its place: by scale, reader and pig. */
function place(
  byScale: Map<string, Map<string, Map<string, number>>>,
  { pig, reader, scale: id, value, at }: Reading,
  scaleOf: (id: string) => Scale | undefined,
): void {
  const [lowest, highest] = scaleOf(id)?.range ?? [0, 0];
  if (value < lowest || value > highest)
    throw new ReadingError(`${at}: ${id} goes from ${lowest} to ${highest}, not ${value}`);
  const byReader = byScale.get(id) ?? new Map<string, Map<string, number>>();
  const byPig = byReader.get(reader) ?? new Map<string, number>();
  if (byPig.has(pig))
    throw new ReadingError(
      `${at}: ${reader} reads pig ${pig} twice on ${id}; call the second time something else, such as "${reader} again"`,
    );
  byPig.set(pig, value);
  byReader.set(reader, byPig);
  byScale.set(id, byReader);
}

function scaleAgreement(
  scale: Scale,
  byReader: ReadonlyMap<string, ReadonlyMap<string, number>>,
  level: number,
): ScaleAgreement {
  const readers = [...byReader];
  if (readers.length > mostReaders)
    throw new ReadingError(
      `${scale.id} was read by ${readers.length} readers, and at most ${mostReaders} are compared, each with each; is the column reader the right one?`,
    );
  const values = readers.flatMap(([, byPig]) => [...byPig.values()]);
  const grades = gradesOf(scale, values);
  const nominal = scale.nominal === true;
  const pairs = readers.flatMap(([first, ofFirst], index) =>
    readers.slice(index + 1).flatMap(([second, ofSecond]): PairAgreement[] => {
      const both = [...ofFirst].flatMap(([pig, value]): (readonly [number, number])[] => {
        const other = ofSecond.get(pig);
        return other === undefined ? [] : [[value, other]];
      });
      return both.length === 0 ? [] : [comparePair([first, second], both, grades, { level, nominal })];
    }),
  );
  const maps = readers.map(([, byPig]) => byPig);
  const together = nominal || readers.length < 3 ? null : togetherOf(maps, level);
  return {
    scale: scale.id,
    title: scale.title,
    range: [scale.range[0] ?? 0, scale.range[1] ?? 0],
    confidence: scale.source.confidence,
    source: scale.source.cite,
    grades,
    pairs,
    together,
    together_caution: together === null ? null : fewPigs(together.subjects),
    published: publishedAgreement.filter(({ organ }) => organ === scale.organ),
  };
}

function gradesOf({ range: [lowest = 0, highest = 0] }: Scale, values: readonly number[]): number[] | null {
  const steps = highest - lowest;
  const whole = [lowest, highest, ...values].every((value) => Number.isInteger(value));
  return whole && steps >= 1 && steps <= mostSteps
    ? Array.from({ length: steps + 1 }, (_, step) => lowest + step)
    : null;
}

function togetherOf(
  readers: readonly ReadonlyMap<string, number>[],
  level: number,
): IntraclassCorrelations | null {
  const pigs = [...(readers[0]?.keys() ?? [])];
  const rows = pigs
    .map((pig) => readers.flatMap((byPig) => byPig.get(pig) ?? []))
    .filter((row) => row.length === readers.length);
  return rows.length < 2 ? null : correlations(rows, level);
}
