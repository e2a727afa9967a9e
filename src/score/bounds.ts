/** The least and the greatest score that observations which are not recorded allow: a grade is certain when both are the same. */
import { organById, type Scale, type ScalePart } from "../knowledge/index.ts";
import { lastReached } from "./classify.ts";
import { combined } from "./combine.ts";
import { withoutFloatError } from "./float-error.ts";
import { millimetres, observation, observedRange } from "./observed.ts";
import { holds, readPart } from "./part.ts";

/** Least and greatest. */
export type Bounds = readonly [number, number];

/** With more combinations than this nothing is said; no scale comes near it. */
const mostCombinations = 4096;

/** Parts that hang on the same observations which are not recorded, so that they cannot be told one by one. */
interface Linked {
  readonly parts: readonly (readonly [string, ScalePart])[];
  /** Paths of the observations, below the organ. */
  readonly open: ReadonlySet<string>;
}

/** What linked parts can be together. */
interface Possible {
  readonly values: readonly number[];
  readonly bonus: number;
}

/**
 * The scores that every completion of an entry lies within. What the scale cannot use is no completion.
 * @param entry the organ as recorded, in which nothing that the scale reads contradicts itself
 * @returns undefined when nothing is recorded that narrows the range of the scale, when no completion has a score, and for
 * different scores of a scale whose grades are names
 */
export function boundsOf(scale: Scale, entry: object | undefined): Bounds | undefined {
  if (Object.values(scale.parts).every(({ read }) => observation(entry, read) === undefined))
    return undefined;
  const groups = linkedParts(scale, entry);
  const possible = groups.map((group) => possibilities(scale, group, entry));
  if (possible.some((some) => some === undefined || some.length === 0)) return undefined;
  const together = combinedBounds(
    scale,
    possible.flatMap((some) => (some === undefined ? [] : [some])),
  );
  const bounds = together && within(scale.range, graded(scale, together));
  if (bounds === undefined) return undefined;
  const [least, greatest] = bounds;
  const [lowest, highest] = scale.range;
  if (least === greatest) return bounds;
  return scale.nominal || (least <= lowest && greatest >= highest) ? undefined : bounds;
}

function linkedParts(scale: Scale, entry: object | undefined): Linked[] {
  let groups: Linked[] = [];
  for (const [name, part] of Object.entries(scale.parts)) {
    const own = openReads(part, entry);
    const isLinked = ({ open }: Linked): boolean => own.some((read) => open.has(read));
    const linked = groups.filter(isLinked);
    groups = [
      ...groups.filter((group) => !isLinked(group)),
      {
        parts: [...linked.flatMap(({ parts }) => parts), [name, part]],
        open: new Set([...linked.flatMap(({ open }) => [...open]), ...own]),
      },
    ];
  }
  return groups;
}

/** What a part would have to know and is not recorded; nothing where the part is 0 without it. */
function openReads({ read, zero_unless, zero_if_zero }: ScalePart, entry: object | undefined): string[] {
  const isOpen = (path: string): boolean => observation(entry, path) === undefined;
  const counts = zero_unless === undefined || holds(zero_unless, entry);
  if (counts === false || (zero_if_zero !== undefined && observation(entry, zero_if_zero) === 0)) return [];
  return [zero_unless?.read ?? read, read].filter(
    (path, at, all) => isOpen(path) && all.indexOf(path) === at,
  );
}

type Ways = readonly Possible[] | undefined;

/** By the parts of a group and what of it is open: where nothing that its parts read is recorded, every record has the same. */
const known = new WeakMap<Scale, Map<string, Ways>>();

/** What the parts of a group can be, each way once; undefined for too many ways. */
function possibilities(scale: Scale, group: Linked, entry: object | undefined): Ways {
  const { parts, open } = group;
  if (!parts.every(([, { read }]) => open.has(read))) return waysOf(scale, group, entry);
  const ofScale = known.get(scale) ?? new Map<string, Ways>();
  known.set(scale, ofScale);
  const key = [...parts.map(([name]) => name), "", ...open].join("\n");
  const ways = ofScale.has(key) ? ofScale.get(key) : waysOf(scale, group, entry);
  ofScale.set(key, ways);
  return ways;
}

function waysOf(scale: Scale, { parts, open }: Linked, entry: object | undefined): Ways {
  let entries: (object | undefined)[] = [entry];
  for (const read of open) {
    const candidates = candidatesFor(scale, read);
    if (candidates.length * entries.length > mostCombinations) return undefined;
    entries = entries.flatMap((one) => candidates.map((value) => completed(one, read.split("."), value)));
  }
  const found = new Map<string, Possible>();
  for (const one of entries) {
    const values = parts.map(([, part]) => readPart(scale, part, one).value);
    const told = values.filter((value) => value !== null);
    if (told.length < values.length) continue;
    const bonus = (scale.bonus ?? []).reduce((sum, { part, above, add }) => {
      const at = parts.findIndex(([name]) => name === part);
      return (told[at] ?? Number.NEGATIVE_INFINITY) > above ? sum + add : sum;
    }, 0);
    found.set([...told, bonus].join(), { values: told, bonus });
  }
  return [...found.values()];
}

/** A copy of an entry with a value at a path. */
function completed(
  entry: object | undefined,
  [key = "", ...rest]: readonly string[],
  value: unknown,
): object {
  const own = { ...entry } as Record<string, unknown>;
  const below = own[key];
  return {
    ...own,
    [key]:
      rest.length === 0
        ? value
        : completed(typeof below === "object" && below !== null ? below : undefined, rest, value),
  };
}

/** Values of an observation among which are the least and the greatest that any part makes of it. */
function candidatesFor(scale: Scale, read: string): unknown[] {
  const parts = Object.values(scale.parts);
  const reading = parts.filter((part) => part.read === read);
  const asking = parts.flatMap(({ zero_unless: asked }) => (asked?.read === read ? [asked] : []));
  const [key = ""] = read.split(".");
  const words = new Set([
    ...(organById(scale.organ)?.definition.observations?.[key]?.values ?? []),
    ...reading.flatMap((part) => (part.steps === undefined ? Object.keys(part.map ?? scale.map ?? {}) : [])),
    ...asking.flatMap(({ is = [] }) => is),
  ]);
  if (words.size > 0) return [...words];
  const unit = reading.find((part) => part.unit !== undefined)?.unit;
  const numbers = turningPoints([
    ...reading.flatMap((part) => limitsOf(scale, part)),
    ...asking.flatMap(({ from, above, below }) => [from, above, below]),
  ]);
  // A part in another unit than the first is read from the same length.
  return unit === undefined ? numbers : numbers.map((mm) => `${mm / millimetres[unit]} ${unit}`);
}

/** Where a part changes its value, a length in millimetres. */
function limitsOf(scale: Scale, part: ScalePart): (number | undefined)[] {
  const steps = part.steps ?? scale.steps;
  const size = part.unit === undefined ? 1 : millimetres[part.unit];
  const ends =
    steps === undefined
      ? [
          part.min ?? Math.min(0, scale.range[0]),
          part.max ?? (scale.combine === "weighted-sum" ? 100 : scale.range[1]),
        ]
      : [];
  const inside = (steps ?? []).flatMap(({ from, above }) => [from, above]);
  return [...ends, ...inside, ...observedRange(scale, part)].map((limit) =>
    limit === undefined ? undefined : limit * size,
  );
}

/** The limits themselves, what lies between two of them, and what lies outside all. */
function turningPoints(limits: readonly (number | undefined)[]): number[] {
  const sorted = [...new Set(limits.filter((limit) => limit !== undefined && Number.isFinite(limit)))]
    .filter((limit) => limit !== undefined)
    .sort((a, b) => a - b);
  const between = sorted.slice(1).map((limit, index) => (limit + (sorted[index] ?? limit)) / 2);
  return [(sorted[0] ?? 0) - 1, ...sorted, ...between, (sorted.at(-1) ?? 0) + 1];
}

/** Bounds of the parts together, before cut points of the total. Each group takes what it takes whatever the others are. */
function combinedBounds(scale: Scale, groups: readonly (readonly Possible[])[]): Bounds | undefined {
  const ofEach = (measure: (one: Possible) => number): Bounds[] =>
    groups.map((some) => extremes(some.map(measure)));
  const bonus = (): Bounds[] => ofEach((one) => one.bonus);
  switch (scale.combine) {
    case "sum":
    case "weighted-sum":
    case "linear":
      return sumOf([offsetOf(scale), ...ofEach(({ values, bonus: more }) => total(values) + more)]);
    case "mean": {
      const parts = Object.keys(scale.parts).length;
      return sumOf(ofEach(({ values, bonus: more }) => total(values) / parts + more));
    }
    case "max": {
      const each = ofEach(({ values }) => Math.max(...values));
      return sumOf([[Math.max(...each.map(([a]) => a)), Math.max(...each.map(([, b]) => b))], ...bonus()]);
    }
    case "rules": {
      const ruled = ruledValues(scale, groups);
      return ruled === undefined || ruled.length === 0 ? undefined : sumOf([extremes(ruled), ...bonus()]);
    }
  }
}

const total = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0);
const sumOf = (each: readonly Bounds[]): Bounds => [
  withoutFloatError(total(each.map(([least]) => least))),
  withoutFloatError(total(each.map(([, greatest]) => greatest))),
];
const offsetOf = ({ combine, offset = 0 }: Scale): Bounds =>
  combine === "linear" ? [offset, offset] : [0, 0];
const extremes = (values: readonly number[]): Bounds => [Math.min(...values), Math.max(...values)];

/** Rules count parts, so it does not matter which part has which value. */
function ruledValues(scale: Scale, groups: readonly (readonly Possible[])[]): number[] | undefined {
  let lists: readonly (readonly number[])[] = [[]];
  for (const some of groups) {
    const longer = lists.flatMap((list) =>
      some.map(({ values }) => [...list, ...values].sort((a, b) => a - b)),
    );
    lists = [...new Map(longer.map((list) => [list.join(), list])).values()];
    if (lists.length > mostCombinations) return undefined;
  }
  return lists.flatMap((list) => combined(scale, list) ?? []);
}

/** The grades that the cut points of the total give between two totals. */
function graded({ total_steps: steps }: Scale, [least, greatest]: Bounds): Bounds | undefined {
  if (steps === undefined) return [least, greatest];
  const limits = steps.flatMap(({ from, above }) => [from ?? least, above ?? least]);
  const reached = [least, greatest, ...turningPoints(limits)]
    .filter((value) => value >= least && value <= greatest)
    .flatMap((value) => lastReached(steps, value)?.value ?? []);
  return reached.length === 0 ? undefined : extremes(reached);
}

/** What of the bounds lies in the range of the scale; only there is a score. */
function within(
  [lowest = 0, highest = 0]: readonly number[],
  bounds: Bounds | undefined,
): Bounds | undefined {
  if (bounds === undefined || bounds[1] < lowest || bounds[0] > highest) return undefined;
  return [Math.max(lowest, bounds[0]), Math.min(highest, bounds[1])];
}
