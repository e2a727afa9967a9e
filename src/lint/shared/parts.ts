/** Conditions on what was observed on one organ, as the tables of parts write them: where they hold, and in whose words. */
import { type Case, formatPath, type Path, quantity, valueAt } from "../../cases/index.ts";
import { organById, type PartCondition, type PlacedOrgan } from "../../knowledge/index.ts";
import { lesions, namedSide, whereOf } from "../../record/index.ts";

/** A place where a condition holds, and what stands there. */
export interface Held {
  readonly path: Path;
  readonly says: string;
}

/** The part of an observation that is asked of, such as `left`; undefined for all. */
type Part = string | undefined;

/** Whether and where a condition holds of an organ, or of one part of what was observed on it. */
export function held(one: Case, id: string, condition: PartCondition, part?: Part): Held | undefined {
  const organ = organById(id);
  if (organ === undefined) return undefined;
  return condition.read === undefined
    ? heldByFinding(one, id, condition, part)
    : heldByValue(one, organ, condition, part);
}

/** The parts of the observations that a condition with a `*` reads, as far as they are recorded. */
export function partsRead(one: Case, id: string, { read }: PartCondition): readonly string[] {
  const organ = organById(id);
  const entry = organ === undefined ? undefined : one.organ(organ).entry;
  const parts = [read ?? []]
    .flat()
    .filter((path) => path.endsWith(".*"))
    .flatMap((path) => Object.keys((valueAt(entry, stepsOf(path.slice(0, -2))) ?? {}) as object));
  return [...new Set(parts)];
}

export const stepsOf = (path: string): string[] => path.split(".");

function heldByFinding(one: Case, id: string, condition: PartCondition, part: Part): Held | undefined {
  const { processes = [], exudates, site } = condition;
  const found = lesions(one, {
    processes: processes as Parameters<typeof lesions>[1]["processes"],
    organs: [id],
  });
  const lesion = found.find(({ finding }) => {
    if (exudates !== undefined && !exudates.includes(finding.exudate ?? "")) return false;
    if (site !== undefined && !site.some((word) => finding.site?.toLowerCase().includes(word) === true))
      return false;
    return part === undefined || finding.side === "both" || namedSide(whereOf(finding)) === part;
  });
  return lesion === undefined
    ? undefined
    : { path: lesion.path, says: `${formatPath(lesion.path)} shows ${lesion.finding.process}` };
}

function heldByValue(one: Case, organ: PlacedOrgan, condition: PartCondition, part: Part): Held | undefined {
  const { entry, path } = one.organ(organ);
  if (entry === undefined) return undefined;
  const byRead = [condition.read ?? []]
    .flat()
    .map((read) => placesOf(entry, organ, stepsOf(read), part, condition));
  const places = byRead.flat();
  const hold = places.filter(({ value }) => isHeld(value, condition));
  const [first] = hold;
  const isEach = hold.length === places.length && byRead.every((read) => read.length > 0);
  if (first === undefined || (condition.all === true && !isEach)) return undefined;
  const shown = String(first.value);
  // Of several values that all must be so, the group is what is named.
  const isGroup = condition.all === true && places.length > 1 && typeof condition.read === "string";
  const steps = isGroup ? first.steps.slice(0, -1) : first.steps;
  const at = [...path, ...steps];
  return { path: at, says: `${formatPath(at)} is ${shown}${isGroup ? " throughout" : ""}` };
}

interface Place {
  readonly steps: readonly string[];
  readonly value: unknown;
}

/** Each single value at a path: of a group of parts each part, of a list each word. None where a part is missing that must be there. */
function placesOf(
  entry: unknown,
  organ: PlacedOrgan,
  read: readonly string[],
  part: Part,
  { all, whole }: PartCondition,
): Place[] {
  const isStarred = read.at(-1) === "*";
  const group = isStarred ? read.slice(0, -1) : read;
  const value = valueAt(entry, group);
  if (isStarred && part !== undefined) return valuesAt(valueAt(value, [part]), [...group, part]);
  const parts = Object.keys(organ.definition.observations?.[group[0] ?? ""]?.parts ?? {});
  const mustBeWhole = whole === true || (isStarred && all === true);
  if (mustBeWhole && parts.some((key) => valueAt(value, [key]) == null)) return [];
  return valuesAt(value, group);
}

function valuesAt(value: unknown, steps: readonly string[]): Place[] {
  if (value === undefined || value === null) return [];
  if (Array.isArray(value)) return value.map((word: unknown) => ({ steps, value: word }));
  if (typeof value !== "object") return [{ steps, value }];
  return Object.entries(value).flatMap(([key, inner]) => valuesAt(inner, [...steps, key]));
}

function isHeld(value: unknown, { is, from, above, below, to }: PartCondition): boolean {
  if (is !== undefined)
    return is.includes(typeof value === "boolean" ? (value ? "yes" : "no") : String(value));
  const number =
    typeof value === "number" ? value : typeof value === "string" ? quantity("length", value) : undefined;
  if (number === undefined) return false;
  return (
    (from === undefined || number >= from) &&
    (above === undefined || number > above) &&
    (below === undefined || number < below) &&
    (to === undefined || number <= to)
  );
}
