/** Values that cannot be read where an alarm looks: whether there is one cannot be told until they are put right. */
import type { Fault, Path } from "../cases/index.ts";
import { alarmPatterns, alarmSigns, systems } from "../knowledge/index.ts";
import { organsAsked } from "../patterns/index.ts";

/** What alarms read beside the organs, in cases and in visits. */
const facts = [
  ...["alarm_check", "authority", "signs", "groups", "death.manner"],
  ...["selection.signs", "selection.treated", "pig.temperature", "pig.age", "pig.class"],
];

/** What alarms read of a finding; a fault elsewhere in it leaves the rest to be read. */
const parts = new Set([
  "process",
  "colour",
  "consistency",
  "exudate",
  "contour",
  "shape",
  "distribution",
  "duration",
  "severity",
]);

/** Whether a value that does not fit the format stands where an alarm looks. */
export function isUntold({ path, intended }: Pick<Fault, "path" | "intended">): boolean {
  return looksAt(path) || looksAt(intended);
}

function looksAt(path: Path): boolean {
  const [system, organ, ...rest] = path.map(String);
  const place = `${path.slice(0, 2).join(".")}.`;
  // A group that cannot be read at all takes what alarms read of it along.
  if (facts.some((fact) => place.startsWith(`${fact}.`) || `${fact}.`.startsWith(place))) return true;
  if (system === undefined || !systemIds.has(system)) return false;
  if (organ === undefined) return true;
  if (isOrgan.has(`${system}.${organ}`)) {
    const part = rest.findLast((key) => !/^\d+$/.test(key));
    return part === undefined || part === "findings" || parts.has(part);
  }
  // A key that no organ has may be one of them in another spelling.
  return rest.length === 0;
}

const systemIds = new Set(systems.map(({ id }) => id));

const isOrgan = new Set([
  ...alarmPatterns.flatMap(({ pattern }) => organsAsked(pattern)),
  ...[...alarmSigns.values()].flatMap(({ normal }) => normal),
]);
